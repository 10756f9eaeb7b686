using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Standing;
using ProcScript.Jobs.Stores;

namespace ProcScript.Floor.Desk;

/// <summary>What the board says of a job, and of which journal.</summary>
/// <param name="Stamp">How the journal was that it is from.</param>
/// <param name="Line">Its line; null where it cannot be read.</param>
/// <param name="Fault">What is wrong with it; null where nothing is.</param>
public sealed record KnownLine(JournalStamp Stamp, JobLine? Line, string? Fault)
{
    /// <summary>What a journal says.</summary>
    /// <param name="job">The job.</param>
    /// <param name="stamp">How it was before it was read.</param>
    /// <param name="journal">The journal.</param>
    public static KnownLine Of(string job, JournalStamp stamp, JournalReading journal)
    {
        ArgumentNullException.ThrowIfNull(journal);
        var damage = journal.Fault is { } fault ? $"{job}: damaged in line {fault.Line}, {fault.Problem}" : null;
        return JobLine.Of(job, [.. journal.Lines.Select(line => line.Event)]) is { } line
            ? new KnownLine(stamp, line, damage)
            : new KnownLine(stamp, null, damage ?? $"{job}: its journal does not begin with a job that is opened");
    }
}
