using System.Globalization;
using ProcScript.Analysis.Bolts;
using ProcScript.Model.Catalog;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Bolts;

/// <summary>A thread marking contradicts itself or the series it is from.</summary>
public sealed class ThreadNotInSeries : KindRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5014", "thread-not-in-series", "A thread that its series does not have", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A metric thread is coarser than the coarse pitch of its diameter, which is the largest that ISO 261 has; or an inch thread is "
            + "marked `UNC` or `UNF` with a number of threads to the inch that this series does not have there, or has a screw size that does not "
            + "exist (ASME B1.1: #0 to #6, #8, #10, #12). Finer pitches and "
            + "inch threads without a series are taken as they are. The series are partly from memory.",
        Why: "The thread decides which nut fits, what the bolt bears and which bag it may share. A marking that does not exist is a slip of "
            + "the pen, mostly the length in place of the pitch.",
        Wrong: """
            tool socket_13 "13 mm socket" { size 13 mm }
            fastener m8x25 "M8 × 25 bolt" { thread M8x25  drive socket_13  torque 22 ± 2 N.m }
            """,
        Right: """
            tool socket_13 "13 mm socket" { size 13 mm }
            fastener m8x25 "M8 × 25 bolt" { thread M8x1.25  length 25 mm  drive socket_13  torque 22 ± 2 N.m }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(Kind kind)
    {
        ArgumentNullException.ThrowIfNull(kind);
        if (ThreadDesignation.Parse(kind.Thread) is { } thread && Contradiction(thread) is { } why)
        {
            yield return new Finding(Id, $"`{kind.Name}` has a thread that does not exist: {kind.Thread}, {why}", kind.Declared, "has this thread")
            {
                Help = "compare the thread with the bolt or the maker's data; put a thread of no series in quotes with a word beside it",
            };
        }
    }

    private static string? Contradiction(ThreadDesignation thread) => thread.System switch
    {
        ThreadSystem.Metric => ThreadSeries.CoarsePitch(thread.Diameter) is { } coarse && thread.Pitch > coarse
            ? string.Create(CultureInfo.InvariantCulture, $"and the coarsest pitch of M{thread.Diameter} is {coarse} mm")
            : null,
        _ => ThreadSeries.ThreadsPerInch(thread) is { } known ? Contradiction(thread, known)
            : thread.Number is { } number ? $"and there is no screw size #{number}"
            : null,
    };

    private static string? Contradiction(ThreadDesignation thread, (double? Coarse, double Fine) known) => thread.Series switch
    {
        "UNC" when known.Coarse is null => $"and #{thread.Number} has no UNC thread",
        "UNC" when known.Coarse != PerInch(thread) => Right(thread.Series, known.Coarse.Value),
        "UNF" when known.Fine != PerInch(thread) => Right(thread.Series, known.Fine),
        _ => null,
    };

    private static string Right(string series, double threads) =>
        string.Create(CultureInfo.InvariantCulture, $"and the {series} thread of that size has {threads} to the inch");

    private static double PerInch(ThreadDesignation thread) => Math.Round(ThreadDesignation.Inch / thread.Pitch, 6);
}
