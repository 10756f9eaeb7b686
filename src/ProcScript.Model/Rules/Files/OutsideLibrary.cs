using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Files;

/// <summary>A <c>use</c> that leads out of the library.</summary>
public sealed class OutsideLibrary : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1105", "outside-library", "A file outside of the library", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A `use` line names a file by its place on a disk, or climbs above the root of the library.",
        Why: "A library must mean the same on every machine, so it holds all that it is made from.",
        Wrong: """
            use "../elsewhere/metric.proc"
            tool lever "trim lever"
            """,
        Right: """
            tool lever "trim lever"
            """);

    internal static Finding At(string written, SourceSpan place) =>
        new(
            Id,
            $"`{written}` lies outside of the library",
            place,
            LibraryPath.IsAbsolute(written) ? "a place on one disk" : "climbs above the root")
        {
            Help = "bring the file into the library and name it by a path relative to this file",
        };
}
