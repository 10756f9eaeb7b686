using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Names;

/// <summary>Two procedures of one name on one machine, in files that do not see each other.</summary>
public sealed class JobDeclaredTwice : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1130", "job-declared-twice", "Two procedures of one name on one machine", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "Two files that do not see each other have a procedure of the same name on a machine of the same name.",
        Why: "Their packs would have one name too, and the one that is built last would lie where the other is looked for.",
        Wrong: """
            // file: table.proc
            machine table "Table" { part top "top" }
            // file: top.proc
            use "table.proc"
            procedure top_off "Take the top off" on table { stage "Top" { remove top } }
            // file: other.proc
            use "table.proc"
            procedure top_off "Take the table top off" on table { stage "Top" { remove top } }
            """,
        Right: """
            // file: table.proc
            machine table "Table" { part top "top" }
            // file: top.proc
            use "table.proc"
            procedure top_off "Take the top off" on table { stage "Top" { remove top } }
            // file: other.proc
            use "table.proc"
            procedure top_off_outdoors "Take the table top off outdoors" on table { stage "Top" { remove top } }
            """);

    internal static Finding At(string name, string machine, SourceSpan later, SourceSpan earlier) =>
        new(Id, $"`{name}` is a procedure on `{machine}` in another file too", later, "its pack would have the same name")
        {
            Related = [new LabeledSpan(earlier, "the other one")],
            Help = "give one of them another name",
        };
}
