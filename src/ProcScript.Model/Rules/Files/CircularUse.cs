using System.Collections.Immutable;
using ProcScript.Model.Rules.Wording;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Files;

/// <summary>Files that use each other in a round.</summary>
public sealed class CircularUse : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1106", "circular-use", "Files that use each other in a round", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "Following `use` lines from a file leads back to it. The line that closes the round is shown. The sample stands in a file "
            + "called `sample.proc`.",
        Why: "No file of the round can be read or lent out without all the others, so where a thing belongs is not clear any more.",
        Wrong: """
            use "sample.proc"
            tool lever "trim lever"
            """,
        Right: """
            tool lever "trim lever"
            """);

    /// <summary>The round as its <c>use</c> lines; the last one closes it.</summary>
    internal static Finding At(ImmutableArray<SourceSpan> round) => round is [var itself]
        ? new Finding(Id, $"`{itself.Path}` uses itself", itself, "this very file") { Help = "leave the line out" }
        : new Finding(
            Id,
            $"{WordList.AndSome([.. round.Select(line => line.Path)])} use each other in a round",
            round[^1],
            $"leads back to `{round[0].Path}`")
        {
            Related = [.. round[..^1].Select(line => new LabeledSpan(line, $"`{line.Path}` uses the next one here"))],
            Help = "move what they share into a file that uses none of them",
        };
}
