using System.Globalization;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Rules.Text;

/// <summary>A file is too large to be read.</summary>
public sealed class FileTooLarge : Rule
{
    private const string Cure = "split it into several files and name them with `use`";

    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1007", "file-too-large", "A file beyond the limit", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A file has more than 16,777,216 characters, or more than 2,000,000 words. It is not read.",
        Why: "A file that size was not written by a person. It is most likely no ProcScript, or many files joined.",
        Wrong: """
            // A file of more than 16,777,216 characters; this one is too short to show it.
            tool socket_13 "13 mm socket"
            """,
        Right: """
            tool socket_13 "13 mm socket"
            """);

    internal static Finding Words(SourceSpan place, int limit) =>
        new(Id, string.Create(CultureInfo.InvariantCulture, $"the file has more than {limit} words"), place)
        {
            Help = Cure,
        };

    internal static Finding At(SourceText text, int limit) =>
        new(Id, Message(text.Content.Length, limit), new SourceSpan(text.Path, default))
        {
            Help = Cure,
        };

    private static string Message(int length, int limit) =>
        string.Create(CultureInfo.InvariantCulture, $"the file has {length} characters, more than {limit}");
}
