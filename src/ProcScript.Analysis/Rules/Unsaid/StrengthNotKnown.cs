using ProcScript.Analysis.Bolts;
using ProcScript.Model.Catalog;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Unsaid;

/// <summary>A fastener whose torque cannot be judged. What is judged, and from what sources, PRC5010 says.</summary>
public sealed class StrengthNotKnown : KindRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC8005", "strength-not-known", "A torque that nothing can be held against", Severity.Hint);

    /// <summary>What an author writes who has looked and found nothing.</summary>
    private const string SaidUnknown = "unknown";

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A kind with a machine thread and a torque has no `grade`, or a grade or a coating of which no strength or friction is known here. "
            + "It is told once a kind; the class of a nut is left out.",
        Why: "Then nobody holds its torque against what the bolt bears, and a slip of the pen by ten stays. Where it cannot be found out, "
            + "write `grade unknown`.",
        Wrong: """
            tool socket_13 "13 mm socket"
            fastener m8 "M8 × 25 bolt" { thread M8x1.25  length 25 mm  drive socket_13  torque 22 ± 2 N.m }
            """,
        Right: """
            tool socket_13 "13 mm socket"
            fastener m8 "M8 × 25 bolt" { thread M8x1.25  length 25 mm  grade 8.8  drive socket_13  torque 22 ± 2 N.m }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(Kind kind)
    {
        ArgumentNullException.ThrowIfNull(kind);
        if (kind is { Category: KindCategory.Fastener, Torque: not null, Thread: not null }
            && ThreadDesignation.Parse(kind.Thread) is { StressArea: not null } thread
            && !IsOfNut(kind, thread)
            && TorqueBand.Of(kind) is null
            && !SaidUnknown.Equals(kind.Grade, StringComparison.OrdinalIgnoreCase))
        {
            yield return new Finding(Id, $"no torque of the {kind.Title} can be judged: {Lack(kind)}", kind.Declared, "how much does it bear?")
            {
                Help = "write the `grade` that is marked on it and its `coating`, or `grade unknown`",
            };
        }
    }

    /// <summary>A class without a dot on a metric thread is that of a nut (ISO 898-2; from memory): what bears the torque is the bolt in it.</summary>
    private static bool IsOfNut(Kind kind, ThreadDesignation thread) =>
        thread.System == ThreadSystem.Metric && kind.Grade is { Length: > 0 } grade && grade.All(char.IsAsciiDigit);

    private static string Lack(Kind kind) => kind switch
    {
        { Grade: null } => "it has no `grade`",
        _ when Bolt.Of(kind.Thread, kind.Grade) is null => $"no strength is known of the grade {kind.Grade} on {kind.Thread}",
        _ => $"no friction is known of the coating \"{kind.Coating}\"",
    };
}
