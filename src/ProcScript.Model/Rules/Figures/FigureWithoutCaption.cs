using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Figures;

/// <summary>A <c>figure</c> of which nobody says what it shows.</summary>
public sealed class FigureWithoutCaption : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1142", "figure-without-caption", "A picture without a caption", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A `figure` has no caption, or an empty one.",
        Why: "The caption says what to look for. It is all that is left where a picture is printed badly, covered in oil, or read aloud.",
        Wrong: """
            // file: box.proc
            clip snap "clip" { release "Lift the edge." }
            machine box "box" {
              part lid "lid" {
                held by 2 snap as lid_clips
                figure "lid.svg"
              }
            }
            // file: lid.svg
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

    internal static Finding At(string written, SourceSpan place) => new(Id, $"the picture `{written}` has no caption", place, "what does it show?")
    {
        Help = "write behind the file what to look for: `figure \"img/bolts.jpg\" \"Four bolts, two hidden\"`",
    };
}
