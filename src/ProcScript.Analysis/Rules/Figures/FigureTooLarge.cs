using ProcScript.Model.Figures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Figures;

/// <summary>A picture that is too large.</summary>
public sealed class FigureTooLarge : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1144", "figure-too-large", "A picture that is too large", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "The file of a `figure` has more bytes, or the picture more pixels, than the settings `limits.figureKilobytes` and `limits.figureMegapixels` allow. What has too many bytes is not read at all.",
        Why: "A picture is printed as wide as a hand. What is larger makes the pack slow to open and to send; a small file that says it is huge is made to stop whoever opens it.",
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
            <svg xmlns="http://www.w3.org/2000/svg" width="90000" height="90000" viewBox="0 0 40 20"><rect width="40" height="20"/></svg>
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

    internal static Finding At(Figure figure, ExaminedFigure examined) => examined.Trouble == FigureTrouble.TooManyPixels
        ? new Finding(Id, $"the picture `{figure.Path}` has {examined.Detail}, more than this shop allows", figure.Declared)
        {
            Help = "save it smaller: 1200 pixels are enough for the width of a card; the setting `limits.figureMegapixels` moves the limit",
        }
        : new Finding(Id, $"the picture `{figure.Path}` has more bytes than this shop allows, and is not read", figure.Declared)
        {
            Help = "save it smaller: 1200 pixels are enough for the width of a card; the setting `limits.figureKilobytes` moves the limit",
        };
}
