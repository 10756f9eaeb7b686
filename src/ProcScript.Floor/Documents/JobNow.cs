using System.Collections.Immutable;
using ProcScript.Jobs.Closing;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Standing;

namespace ProcScript.Floor.Documents;

/// <summary>How a job stands, for a tablet.</summary>
public sealed record JobNow
{
    /// <summary>How many events its journal has.</summary>
    public required int Events { get; init; }

    /// <summary>The hash of its last line.</summary>
    public required string LastHash { get; init; }

    /// <summary>The revision of the cards that are worked from.</summary>
    public required string Plan { get; init; }

    /// <summary><c>open</c>, <c>paused</c> or <c>closed</c>.</summary>
    public required string State { get; init; }

    /// <summary>The event that stopped it; null where the work goes on.</summary>
    public JobEvent? Paused { get; init; }

    /// <summary>The event that closed it; null while it is open.</summary>
    public JobEvent? Closed { get; init; }

    /// <summary>The steps that are done.</summary>
    public required ImmutableArray<NowDone> Done { get; init; }

    /// <summary>The last reading at each step.</summary>
    public required ImmutableArray<NowReading> Readings { get; init; }

    /// <summary>The numbers of the steps that are signed, each with who signed.</summary>
    public required ImmutableArray<NowSigned> Signed { get; init; }

    /// <summary>The steps that may be done now.</summary>
    public required ImmutableArray<StatusStep> Next { get; init; }

    /// <summary>How each energy of the machine stands.</summary>
    public required ImmutableArray<NowEnergy> Energies { get; init; }

    /// <summary>What can hurt somebody as the machine stands.</summary>
    public required ImmutableArray<string> Unsafe { get; init; }

    /// <summary>What is open, and was closed over.</summary>
    public required ImmutableArray<string> Hidden { get; init; }

    /// <summary>What is not as on the whole machine.</summary>
    public required ImmutableArray<StatusLine> Open { get; init; }

    /// <summary>What the bags hold.</summary>
    public required ImmutableArray<StatusBag> Bags { get; init; }

    /// <summary>Pieces that are left over, missing or broken.</summary>
    public required ImmutableArray<string> Pieces { get; init; }

    /// <summary>Whether the cards have to be made anew before anybody goes on by them.</summary>
    public required bool NeedsNewCards { get; init; }

    /// <summary>Why the newest cards cannot be followed; empty where they can.</summary>
    public required string Unfollowed { get; init; }

    /// <summary>What happened otherwise than planned.</summary>
    public required ImmutableArray<StatusDeviation> Deviations { get; init; }

    /// <summary>What came out and went in of fluids.</summary>
    public required ImmutableArray<FluidBalance> Fluids { get; init; }

    /// <summary>What keeps it from being closed.</summary>
    public required ImmutableArray<string> BeforeClosing { get; init; }

    /// <summary>Notes and photos, and what else people have told beside the steps; the newest last.</summary>
    public required ImmutableArray<JobEvent> Told { get; init; }

    /// <summary>The server's clock.</summary>
    public required DateTimeOffset Time { get; init; }
}

/// <summary>A step that is done.</summary>
/// <param name="Step">The step.</param>
/// <param name="Event">The number of the event that tells of it; 0 where the cards were made with it done.</param>
/// <param name="By">Who did it.</param>
/// <param name="At">When, by the clock of who told it; null where nobody did.</param>
/// <param name="Logged">When it was written down, by the server's clock; null where nobody told it.</param>
/// <param name="Count">How many pieces it moved; 0 where that is not said.</param>
/// <param name="Also">Who has told besides that it is done.</param>
public sealed record NowDone(int Step, int Event, string By, DateTimeOffset? At, DateTimeOffset? Logged, int Count, ImmutableArray<string> Also);

/// <summary>A reading.</summary>
/// <param name="Step">The step.</param>
/// <param name="Value">What was written down.</param>
/// <param name="Verdict"><c>good</c>, <c>out</c> or <c>unreadable</c>.</param>
/// <param name="By">Who took it.</param>
/// <param name="At">When, by the clock of who told it.</param>
public sealed record NowReading(int Step, string Value, string Verdict, string By, DateTimeOffset At);

/// <summary>A signature.</summary>
/// <param name="Step">The step.</param>
/// <param name="By">Who signed.</param>
public sealed record NowSigned(int Step, string By);

/// <summary>An energy.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Title">What people call it.</param>
/// <param name="State"><c>live</c>, <c>unproved</c> or <c>isolated</c>.</param>
public sealed record NowEnergy(string Name, string Title, string State);
