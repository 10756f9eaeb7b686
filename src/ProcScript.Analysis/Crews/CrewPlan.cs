using System.Collections.Immutable;

namespace ProcScript.Analysis.Crews;

/// <summary>Who does what when in some jobs.</summary>
/// <param name="Format">The version of this form.</param>
/// <param name="Jobs">The jobs.</param>
public sealed record CrewDocument(string Format, ImmutableArray<CrewPlan> Jobs);

/// <summary>Who does what when in a proven job. Times are seconds from its beginning.</summary>
public sealed record CrewPlan
{
    /// <summary>The job: the procedure, with its arguments.</summary>
    public required string Job { get; init; }

    /// <summary>What the cards call it.</summary>
    public required string Title { get; init; }

    /// <summary>What the cards call the machine.</summary>
    public required string MachineTitle { get; init; }

    /// <summary>How long all of them take.</summary>
    public required double Seconds { get; init; }

    /// <summary>How long one person takes, in the order of the cards.</summary>
    public required double OnePerson { get; init; }

    /// <summary>A time that no order is quicker than, with so many people.</summary>
    public required double Least { get; init; }

    /// <summary>Whether no order is quicker.</summary>
    public required bool IsShortest { get; init; }

    /// <summary>How long each number of people takes, from one up.</summary>
    public required ImmutableArray<CrewTotal> Totals { get; init; }

    /// <summary>The people.</summary>
    public required ImmutableArray<CrewPerson> People { get; init; }

    /// <summary>The longest chain of steps of which each waits for the one before: no number of people is quicker than that.</summary>
    public required CrewPath CriticalPath { get; init; }

    /// <summary>The steps in the order in which they begin; of those that begin together, as the cards have them.</summary>
    public required ImmutableArray<CrewEntry> Steps { get; init; }

    /// <summary>When several people do different things at once.</summary>
    public required ImmutableArray<CrewMeanwhile> SideBySide { get; init; }

    /// <summary>Tools that two people want at once.</summary>
    public required ImmutableArray<CrewTool> ToolsAtOnce { get; init; }

    /// <summary>The certificates that steps ask for and that not everybody holds.</summary>
    public required ImmutableArray<CrewCertificate> Certificates { get; init; }

    /// <summary>The steps that ask for a certificate which nobody who is there to do them holds: somebody has to be called for them.</summary>
    public required ImmutableArray<int> Uncertified { get; init; }

    /// <summary>The places in which only so many people work at once, where that keeps anybody out.</summary>
    public required ImmutableArray<CrewPlace> Places { get; init; }

    /// <summary>The steps that take more people than there are: somebody has to be called for them.</summary>
    public required ImmutableArray<int> NeedHelp { get; init; }
}

/// <summary>How long so many people take.</summary>
/// <param name="People">How many.</param>
/// <param name="Seconds">How long.</param>
public sealed record CrewTotal(int People, double Seconds);

/// <summary>Somebody of the crew.</summary>
/// <param name="Name">The letter by which the cards call them.</param>
/// <param name="Seconds">How long they have their hands full.</param>
/// <param name="Steps">Their steps, in order.</param>
public sealed record CrewPerson(string Name, double Seconds, ImmutableArray<int> Steps);

/// <summary>A certificate that not everybody holds.</summary>
/// <param name="Name">Its name; empty for what the law asks for and nothing here names.</param>
/// <param name="Title">What people call it; empty likewise.</param>
/// <param name="People">Who holds it.</param>
/// <param name="Steps">The steps that ask for it.</param>
public sealed record CrewCertificate(string Name, string Title, ImmutableArray<string> People, ImmutableArray<int> Steps);

/// <summary>A place in which only so many people work at once.</summary>
/// <param name="Title">What people call it.</param>
/// <param name="Room">How many.</param>
/// <param name="Steps">The steps that are done in it.</param>
public sealed record CrewPlace(string Title, int Room, ImmutableArray<int> Steps);

/// <summary>A chain of steps.</summary>
/// <param name="Seconds">How long it takes.</param>
/// <param name="Steps">The steps.</param>
public sealed record CrewPath(double Seconds, ImmutableArray<int> Steps);

/// <summary>A step in its time.</summary>
/// <param name="Step">Its number on the cards.</param>
/// <param name="Text">What is done.</param>
/// <param name="People">Who does it; nobody where the job stands.</param>
/// <param name="Start">When it begins.</param>
/// <param name="Free">When those who do it have their hands free.</param>
/// <param name="End">When its effect is there: what runs by itself has ended, what cures has cured.</param>
public sealed record CrewEntry(int Step, string Text, ImmutableArray<string> People, double Start, double Free, double End)
{
    /// <summary>Whether all others stand clear meanwhile.</summary>
    public bool StandClear { get; init; }

    /// <summary>The steps of others that they have to wait for first, where they have not waited for as much before.</summary>
    public ImmutableArray<CrewWait> WaitsFor { get; init; } = [];
}

/// <summary>A step of others that somebody waits for.</summary>
/// <param name="Step">The step.</param>
/// <param name="People">Who does it.</param>
public sealed record CrewWait(int Step, ImmutableArray<string> People);

/// <summary>A time in which several people do different things.</summary>
/// <param name="Start">Since when.</param>
/// <param name="End">Until when.</param>
/// <param name="People">Who does what.</param>
public sealed record CrewMeanwhile(double Start, double End, ImmutableArray<CrewShare> People);

/// <summary>What somebody does in a while.</summary>
/// <param name="Name">Who.</param>
/// <param name="Steps">The steps, in order.</param>
public sealed record CrewShare(string Name, ImmutableArray<int> Steps);

/// <summary>A tool that two people want at once.</summary>
/// <param name="Title">The tool.</param>
/// <param name="Steps">The steps, in pairs.</param>
public sealed record CrewTool(string Title, ImmutableArray<int> Steps);
