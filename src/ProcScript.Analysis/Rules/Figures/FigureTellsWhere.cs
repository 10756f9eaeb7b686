using ProcScript.Model.Figures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Figures;

/// <summary>A picture that tells where it was taken.</summary>
public sealed class FigureTellsWhere : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1147", "figure-tells-where", "A picture that tells where it was taken", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "The file of a `figure` has a position in it, as phones write one. The pack leaves it out, with all other notes of the camera; the file in the library still has it. No text can show this: the first sample shows a drawing that is not there.",
        Why: "Whoever gets the library can see at which customer's, and when, the picture was taken.",
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

    internal static Finding At(Figure figure) =>
        new(Id, $"the picture `{figure.Path}` has in it where it was taken; the pack leaves that out", figure.Declared)
        {
            Help = "save it without the notes of the camera before the library goes to others",
        };
}
