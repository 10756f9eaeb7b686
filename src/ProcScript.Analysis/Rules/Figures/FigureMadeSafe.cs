using ProcScript.Model.Figures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Figures;

/// <summary>A drawing with more in it than a drawing.</summary>
public sealed class FigureMadeSafe : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1146", "figure-made-safe", "A drawing with more in it than a drawing", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "Parts of an SVG were left out of the pack: scripts, what happens on a click, references to other files or addresses, foreign pages, moving parts, copies within copies. The message names them.",
        Why: "They could run, or call somebody, wherever the pack is opened. Without them the drawing may look otherwise than its author meant.",
        Wrong: """
            // file: box.proc
            clip snap "clip" { release "Lift the edge." }
            machine box "box" {
              part lid "lid" {
                held by 2 snap as lid_clips
                figure "lid.svg" "Both clips are on the long side"
              }
            }
            // file: lid.svg
            <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20"><script>1</script><rect width="40" height="20"/></svg>
            """,
        Right: """
            // file: box.proc
            clip snap "clip" { release "Lift the edge." }
            machine box "box" {
              part lid "lid" {
                held by 2 snap as lid_clips
                figure "lid.svg" "Both clips are on the long side"
              }
            }
            // file: lid.svg
            <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20"><rect width="40" height="20"/></svg>
            """);

    internal static Finding At(Figure figure, ExaminedFigure examined) =>
        new(Id, $"of the drawing `{figure.Path}` is left out: {string.Join(", ", examined.Removed.Take(Most))}{(examined.Removed.Length > Most ? " and more" : "")}", figure.Declared)
        {
            Help = "take it out of the drawing, look at the card, and save the drawing as plain SVG",
        };

    private const int Most = 8;
}
