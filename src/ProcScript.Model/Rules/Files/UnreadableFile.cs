using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Files;

/// <summary>A file that is there and gives no text.</summary>
public sealed class UnreadableFile : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1107", "unreadable-file", "A file that cannot be read", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "The file is there, and no text came out of it: the system refuses it, it is not UTF-8, or it is far too large; it is a link "
            + "that leads out of the library, or a device or a pipe instead of a file. No text "
            + "can show this: the first sample only tells what would be missing.",
        Why: "Everything that the file declares is unknown. So that one trouble gives one message, names stay unchecked where it may be "
            + "missed.",
        Wrong: """
            // This file cannot be read, so the lever below is not known.
            tool lever "trim lever"
            """,
        Right: """
            tool lever "trim lever"
            """);

    internal static Finding At(SourceSpan place, SourceReading reading)
    {
        var (what, help) = reading.Outcome switch
        {
            SourceOutcome.NotText => ("is not a text in UTF-8", "save it as UTF-8"),
            SourceOutcome.TooLarge => ("is too large to be read", "split it, and let the pieces `use` each other"),
            SourceOutcome.LeadsOut => ("lies outside of the library: a link leads there", "put the file itself into the library"),
            SourceOutcome.Special => ("is a device, a pipe or a socket, and no file", "write the text into a file, or hand it in as the standard input, `-`"),
            _ => ("cannot be read", "see that the file may be read"),
        };
        var detail = reading.Detail.Length > 0 ? $": {reading.Detail.TrimEnd('.')}" : "";
        return new Finding(Id, $"`{place.Path}` {what}{detail}", place) { Help = help };
    }
}
