using System.Collections.Immutable;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Rules.Wording;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Settings;

/// <summary>A setting has a word that it does not know.</summary>
public sealed class UnknownChoice : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC7015", "unknown-choice", "A setting with a word that it does not know", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A setting that is one of a few words is another one.",
        Why: "Nobody can say what was meant, and what is built in holds instead.",
        Wrong: """
            // file: procscript.json
            { "severities": { "long-sentence": "warn" } }
            """,
        Right: """
            // file: procscript.json
            { "severities": { "long-sentence": "warning" } }
            """);

    internal static Finding At(string key, string word, ImmutableArray<string> words, SourceSpan place)
    {
        var near = words.FirstOrDefault(known => word.Length > 2 && known.StartsWith(word, StringComparison.OrdinalIgnoreCase)) is { } longer
            ? [longer]
            : new NearNames(words).Find(word);
        return new Finding(Id, $"`{key}` cannot be `{word}`", place)
        {
            Help = near.IsEmpty ? $"write {WordList.Or(words.Select(known => $"`\"{known}\"`"))}" : DidYouMean.Help(near),
        };
    }
}
