using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Figures;

/// <summary>A <c>figure</c> that leads out of the library.</summary>
public sealed class FigureOutsideLibrary : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1141", "figure-outside-library", "A picture outside of the library", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A `figure` names a file by its place on a disk, climbs above the root of the library, or names no file at all.",
        Why: "A library must mean the same on every machine. And what lies outside of it was never meant to be printed: a pack goes from hand to hand.",
        Wrong: """
            clip snap "clip" { release "Lift the edge." }
            machine box "box" {
              part lid "lid" {
                held by 2 snap as lid_clips
                figure "../../camera/lid.jpg" "The lid, with its two clips"
              }
            }
            """,
        Right: """
            clip snap "clip" { release "Lift the edge." }
            machine box "box" {
              part lid "lid" { held by 2 snap as lid_clips }
            }
            """);

    internal static Finding At(string written, SourceSpan place) => new(
        Id,
        written.Length == 0 ? "this picture has no file" : $"the picture `{written}` lies outside of the library",
        place,
        written.Length == 0 ? "no path" : LibraryPath.IsAbsolute(written) ? "a place on one disk" : "climbs above the root")
    {
        Help = "put the file into the library and name it by a path relative to this file, such as `img/lid.jpg`",
    };
}
