using System.Collections.Immutable;

namespace ProcScript.Analysis.Comparing;

/// <summary>
/// What is otherwise in the work packs of a library than in those of another state of it, in shop words. It is public:
/// <c>diff --format json</c> writes it.
/// </summary>
public sealed record LibraryChange
{
    /// <summary>The version of this document's form.</summary>
    public required string Format { get; init; }

    /// <summary>The jobs that only the new state has.</summary>
    public required ImmutableArray<JobName> Added { get; init; }

    /// <summary>The jobs that only the old state has.</summary>
    public required ImmutableArray<JobName> Dropped { get; init; }

    /// <summary>The jobs that are proven now and were not.</summary>
    public required ImmutableArray<JobName> NowProven { get; init; }

    /// <summary>The jobs that were proven and no longer are: their packs cannot be made anew.</summary>
    public required ImmutableArray<JobName> NoLongerProven { get; init; }

    /// <summary>The jobs whose packs say otherwise, and so carry another revision.</summary>
    public required ImmutableArray<JobChange> Changed { get; init; }

    /// <summary>The jobs that are proven in neither state, so that there is nothing to compare.</summary>
    public required ImmutableArray<JobName> NotCompared { get; init; }

    /// <summary>Whether nothing is otherwise.</summary>
    internal bool IsEmpty => Added.IsEmpty && Dropped.IsEmpty && NowProven.IsEmpty && NoLongerProven.IsEmpty && Changed.IsEmpty;
}

/// <summary>A job in one variant of its machine.</summary>
/// <param name="Job">The procedure's name with its arguments.</param>
/// <param name="Title">The procedure's title.</param>
/// <param name="Machine">The machine's name.</param>
/// <param name="With">The options that the machine has.</param>
public sealed record JobName(string Job, string Title, string Machine, ImmutableArray<string> With);

/// <summary>What is otherwise in the pack of one job.</summary>
public sealed record JobChange
{
    /// <summary>The job, by its new title.</summary>
    public required JobName Name { get; init; }

    /// <summary>The revision on the paper that is out.</summary>
    public required string OldRevision { get; init; }

    /// <summary>The revision on the paper that would be printed now.</summary>
    public required string NewRevision { get; init; }

    /// <summary>The estimated times, in seconds.</summary>
    public required TimeChange Times { get; init; }

    /// <summary>What the cover says otherwise.</summary>
    public required ImmutableArray<ValueChange> Cover { get; init; }

    /// <summary>The steps that came, went, moved or say otherwise, in the order of the new cards; those that went stand last.</summary>
    public required ImmutableArray<StepChange> Steps { get; init; }

    /// <summary>What the lists say otherwise: tools, order list, consumables, protective equipment, energies, fluids and the like.</summary>
    public required ImmutableArray<ListChange> Lists { get; init; }

    /// <summary>The alerts that are otherwise.</summary>
    public required ImmutableArray<AlertChange> Alerts { get; init; }

    /// <summary>The precautions that are gone or weaker while what they were for is still done.</summary>
    public required ImmutableArray<SafetyChange> Safety { get; init; }

    /// <summary>The printed pages and labels of the old revision that say something else than the new ones, and are void.</summary>
    public required ImmutableArray<VoidPaper> Void { get; init; }
}

/// <summary>Times in seconds, before and after.</summary>
/// <param name="OldOnePerson">The whole job for one person, before.</param>
/// <param name="NewOnePerson">The same after.</param>
/// <param name="OldCrew">The whole job for two people, before.</param>
/// <param name="NewCrew">The same after.</param>
public sealed record TimeChange(double OldOnePerson, double NewOnePerson, double OldCrew, double NewCrew);

/// <summary>Something that is said otherwise.</summary>
/// <param name="What">What: <c>torque</c>, <c>count</c>, <c>new parts</c> and the like.</param>
/// <param name="Old">What was said; empty where nothing was.</param>
/// <param name="New">What is said; empty where nothing is.</param>
public sealed record ValueChange(string What, string Old, string New);

/// <summary>A step that is otherwise.</summary>
/// <param name="Kind"><c>added</c>, <c>dropped</c>, <c>moved</c> or <c>changed</c>.</param>
/// <param name="Phase"><c>strip</c>, <c>work</c> or <c>refit</c>.</param>
/// <param name="Text">What is done, by the new text where there is one.</param>
/// <param name="OldStep">Its number before; 0 where there was none.</param>
/// <param name="NewStep">Its number now; 0 where there is none.</param>
/// <param name="OldCard">Its card before; empty where there was none.</param>
/// <param name="NewCard">Its card now; empty where there is none.</param>
/// <param name="Values">What it says otherwise.</param>
public sealed record StepChange(
    string Kind,
    string Phase,
    string Text,
    int OldStep,
    int NewStep,
    string OldCard,
    string NewCard,
    ImmutableArray<ValueChange> Values);

/// <summary>A line of a list that is otherwise.</summary>
/// <param name="List">The list: <c>tools</c>, <c>order list</c> and the like.</param>
/// <param name="Kind"><c>added</c>, <c>dropped</c> or <c>changed</c>.</param>
/// <param name="Title">What the line is about.</param>
/// <param name="Old">What it said of it, such as a count; empty where it says no more than the title.</param>
/// <param name="New">What it says of it now.</param>
public sealed record ListChange(string List, string Kind, string Title, string Old, string New);

/// <summary>An alert that is otherwise.</summary>
/// <param name="Kind"><c>added</c>, <c>removed</c>, <c>gone with its step</c>, <c>weakened</c>, <c>strengthened</c> or <c>reworded</c>.</param>
/// <param name="OldWord">Its signal word before; empty where there was none.</param>
/// <param name="NewWord">Its signal word now; empty where there is none.</param>
/// <param name="OldText">Its text before; Markdown.</param>
/// <param name="NewText">Its text now; Markdown.</param>
/// <param name="OldStep">The step it stood before; 0 for an alert of the whole job, and where there was none.</param>
/// <param name="NewStep">The step it stands before, or would if it were not gone; 0 for an alert of the whole job, and where there is no such step.</param>
public sealed record AlertChange(string Kind, string OldWord, string NewWord, string OldText, string NewText, int OldStep, int NewStep)
{
    /// <summary>Whether people are warned less than before of what is still done.</summary>
    public bool IsLoss => Kind is "removed" or "weakened";
}

/// <summary>A precaution that is gone or weaker.</summary>
/// <param name="Kind"><c>gone</c> or <c>weaker</c>.</param>
/// <param name="Measure">The verb of the step, such as <c>isolate</c>; of an energy that is still isolated <c>lock</c>, <c>bleed</c>,
/// <c>wait</c>, <c>verify</c> or <c>expect</c>.</param>
/// <param name="Item">The name of the energy, fluid or part.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Old">What was said: the step, the text, the time or the limit.</param>
/// <param name="New">What is said now; empty where nothing is.</param>
public sealed record SafetyChange(string Kind, string Measure, string Item, string Title, string Old, string New)
{
    /// <summary>Whether it is a step, and not a measure of an energy.</summary>
    internal bool IsStep { get; init; }
}

/// <summary>A printed page or a label that is void.</summary>
/// <param name="Paper">How it is headed: <c>Strip 2 of 5: Trim</c>, <c>Bag 3</c>.</param>
/// <param name="Revision">The revision printed on it.</param>
/// <param name="OnlyNumbers">Whether only numbers of steps, bags and cards are otherwise.</param>
public sealed record VoidPaper(string Paper, string Revision, bool OnlyNumbers);
