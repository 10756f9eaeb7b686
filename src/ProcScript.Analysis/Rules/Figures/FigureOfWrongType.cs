using ProcScript.Model.Figures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Figures;

/// <summary>A file that is not the picture that its name says.</summary>
public sealed class FigureOfWrongType : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1145", "figure-of-wrong-type", "A file that is not the picture that its name says", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "The file of a `figure` is none of JPEG, PNG, WebP and SVG, is another of them than its name says, or is damaged. What it is is told from its first bytes, not from its name. An SVG with a document type is not read.",
        Why: "What opens as a picture on one computer and as something else on another does not belong on a card, and a reader that guesses can be led astray.",
        Wrong: """
            // file: box.proc
            clip snap "clip" { release "Lift the edge." }
            machine box "box" {
              part lid "lid" {
                held by 2 snap as lid_clips
                figure "lid.png" "Both clips are on the long side"
              }
            }
            // file: lid.png
            <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20"><rect width="40" height="20"/></svg>
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

    internal static Finding At(Figure figure, ExaminedFigure examined) => examined.Trouble == FigureTrouble.Damaged
        ? new Finding(Id, $"the picture `{figure.Path}` cannot be taken: {examined.Detail}", figure.Declared)
        {
            Help = "open it in a program for pictures and save it anew",
        }
        : new Finding(Id, $"`{figure.Path}` is not the picture that its name says{(examined.Detail.Length > 0 ? $": it is {examined.Detail}" : "")}", figure.Declared)
        {
            Help = "save it as JPEG (`.jpg`), PNG (`.png`), WebP (`.webp`) or SVG (`.svg`)",
        };
}
