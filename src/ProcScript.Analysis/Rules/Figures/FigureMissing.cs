using ProcScript.Model.Figures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Figures;

/// <summary>A picture that is not there or cannot be read.</summary>
public sealed class FigureMissing : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1143", "figure-missing", "A picture that is not there or cannot be read", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "The file of a `figure` is not there, cannot be read, or is a link that leads out of the library. The path counts from the file that it stands in.",
        Why: "The card would show an empty place where somebody should look.",
        Wrong: """
            // file: box.proc
            clip snap "clip" { release "Lift the edge." }
            machine box "box" {
              part lid "lid" {
                held by 2 snap as lid_clips
                figure "lid.svg" "Both clips are on the long side"
              }
            }
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
        new(Id, $"the picture `{figure.Path}` {Trouble(examined)}", figure.Declared)
        {
            Help = examined.Trouble switch
            {
                FigureTrouble.Missing => "write the path from this file on, or add the picture",
                FigureTrouble.LeadsOut => "put the picture itself into the library",
                _ => "see that the file may be read",
            },
        };

    private static string Trouble(ExaminedFigure examined) => examined.Trouble switch
    {
        FigureTrouble.Missing => "is not there",
        FigureTrouble.LeadsOut => "is a link that leads out of the library",
        _ => $"cannot be read{(examined.Detail.Length > 0 ? $": {examined.Detail.TrimEnd('.')}" : "")}",
    };
}
