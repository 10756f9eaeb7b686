using System.Collections.Immutable;
using ProcScript.Model.Rules.Wording;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Files;

/// <summary>A <c>use</c> of a file that is not there.</summary>
public sealed class MissingFile : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1104", "missing-file", "A file that is not there", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A `use` line names a file that the library does not hold. The path is read from the folder of the file that says it.",
        Why: "Everything that the file would declare is unknown. So that one slip gives one message, names stay unchecked where it may "
            + "be missed.",
        Wrong: """
            use "catalog/gone.proc"
            tool lever "trim lever"
            """,
        Right: """
            tool lever "trim lever"
            """);

    internal static Finding At(string written, string path, ImmutableArray<string> near, SourceSpan place) =>
        new(Id, $"there is no file `{path}`", place, "read from the folder of this file")
        {
            Help = near.IsEmpty ? General(written) : DidYouMean.Help(near),
            Fixes = [.. near.Select(name => new Fix($"Write `{name}`", FixGrade.NeedsLook, [new TextEdit(place, $"\"{name}\"")]))],
        };

    private static string General(string written) => written.Contains('\\', StringComparison.Ordinal)
        ? "part folders with `/`"
        : "paths are relative to the file that says `use`";
}
