using System.Globalization;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Rules.Text;

/// <summary>More blocks stand within each other than the language allows.</summary>
public sealed class NestedTooDeep : Rule
{
    private const int Deep = 65;

    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1006", "nested-too-deep", "Blocks within blocks beyond the limit", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "More than 64 blocks stand within each other. What stands deeper is not read.",
        Why: "No machine is built that way; a brace too many usually is.",
        Wrong: "machine pump \"Pump\" {\n" + Parts(Deep) + "\n}\n",
        Right: "machine pump \"Pump\" {\n" + Parts(2) + "\n}\n");

    internal static Finding At(SourceSpan brace, int limit) =>
        new(Id, string.Create(CultureInfo.InvariantCulture, $"more than {limit} blocks stand within each other"), brace)
        {
            Label = "this block is not read",
            Help = "declare parts side by side instead of within each other, or look for a brace too many",
        };

    private static string Parts(int depth) =>
        string.Concat(Enumerable.Range(1, depth).Select(i => string.Create(CultureInfo.InvariantCulture, $"part p{i} \"part {i}\" {{ ")))
        + string.Concat(Enumerable.Repeat("}", depth));
}
