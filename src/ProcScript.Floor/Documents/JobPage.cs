using System.Collections.Immutable;
using ProcScript.Analysis.Plans;

namespace ProcScript.Floor.Documents;

/// <summary>All that a tablet needs to go on with a job, also where there is no network.</summary>
/// <param name="Job">The job's name in the store.</param>
/// <param name="Cards">What it is done by.</param>
/// <param name="Now">How it stands.</param>
public sealed record JobPage(string Job, PageCards Cards, JobNow Now);

/// <summary>The cards that a job is done by. Prose is HTML in which nothing of an author is markup; all other texts are plain.</summary>
public sealed record PageCards
{
    /// <summary>The form of this document: a tablet that has kept another asks for it anew.</summary>
    public int Form { get; init; } = 2;

    /// <summary>Their revision.</summary>
    public required string Revision { get; init; }

    /// <summary>The language that they are in: a tag of BCP 47.</summary>
    public required string Language { get; init; }

    /// <summary>What people call the job.</summary>
    public required string Title { get; init; }

    /// <summary>What people call the machine.</summary>
    public required string Machine { get; init; }

    /// <summary>Which machine it is.</summary>
    public required string Serial { get; init; }

    /// <summary>The work order.</summary>
    public required string Order { get; init; }

    /// <summary>The options that the machine has.</summary>
    public required ImmutableArray<string> With { get; init; }

    /// <summary>Alerts for the whole job.</summary>
    public required ImmutableArray<PageAlert> Alerts { get; init; }

    /// <summary>The usual cautions for what the job touches.</summary>
    public required ImmutableArray<PlanHazard> Hazards { get; init; }

    /// <summary>Work that most countries leave to licensed people.</summary>
    public required ImmutableArray<string> Licensed { get; init; }

    /// <summary>Protective equipment that is worn on the whole job.</summary>
    public required ImmutableArray<string> Ppe { get; init; }

    /// <summary>How the energies of the job are made safe.</summary>
    public required ImmutableArray<PageEnergy> Energies { get; init; }

    /// <summary>The cards in the order of work.</summary>
    public required ImmutableArray<PageCard> Cards { get; init; }

    /// <summary>The bags.</summary>
    public required ImmutableArray<PlanBag> Bags { get; init; }

    /// <summary>The items of the machine that something can happen to.</summary>
    public required ImmutableArray<PageItem> Items { get; init; }
}

/// <summary>An alert.</summary>
/// <param name="Word"><c>danger</c>, <c>warning</c>, <c>caution</c> or <c>notice</c>.</param>
/// <param name="Html">What it says.</param>
public sealed record PageAlert(string Word, string Html);

/// <summary>An energy that the job isolates.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Title">What people call it.</param>
/// <param name="MakeSafe">How it is made safe, line by line.</param>
/// <param name="Verify">How it is proved to be off.</param>
/// <param name="Limits">What the reading must be, in words.</param>
/// <param name="Restore">How it is brought back.</param>
public sealed record PageEnergy(string Name, string Title, ImmutableArray<string> MakeSafe, string Verify, string Limits, string Restore);

/// <summary>An item.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Title">What people call it; of a joint with its pieces and where it is.</param>
/// <param name="Count">How many pieces it has; 0 where it has none.</param>
/// <param name="Verbs">What can be done to it.</param>
/// <param name="Positions">Of a control, where it can stand.</param>
public sealed record PageItem(string Name, string Title, int Count, ImmutableArray<string> Verbs, ImmutableArray<string> Positions);

/// <summary>A card.</summary>
/// <param name="Title">What it is called.</param>
/// <param name="Phase"><c>strip</c>, <c>work</c> or <c>refit</c>.</param>
/// <param name="Steps">Its steps.</param>
public sealed record PageCard(string Title, string Phase, ImmutableArray<PageStep> Steps);
