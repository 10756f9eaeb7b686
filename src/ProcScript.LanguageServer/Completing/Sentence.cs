using System.Text.RegularExpressions;
using ProcScript.LanguageServer.Protocol;

namespace ProcScript.LanguageServer.Completing;

/// <summary>A way to begin in a block: a word, and what usually follows it with places to fill in.</summary>
/// <param name="Label">The word.</param>
/// <param name="Detail">What it says.</param>
/// <param name="Body">What is written, in the protocol's notation for places to fill in; empty for the word and a blank.</param>
internal sealed partial record Sentence(string Label, string Detail, string Body = "")
{
    /// <summary>The item.</summary>
    /// <param name="fill">Says what there is to choose from at the places of a body; null for a client that knows none.</param>
    public CompletionItem Item(Func<string, string>? fill) => Body.Length == 0 || fill is null
        ? new CompletionItem(Label, ChoiceList.Keyword) { Detail = Detail, InsertText = Body.Length == 0 ? Label + " " : Plain() }
        : new CompletionItem(Label, ChoiceList.Snippet) { Detail = Detail, InsertText = fill(Body), InsertTextFormat = CompletionItem.Snippet };

    /// <summary>The body up to its first place to fill in.</summary>
    private string Plain() => Hole().Match(Body) is { Success: true, Index: var end } ? Body[..end] : Body;

    [GeneratedRegex(@"\$\{?\d")]
    private static partial Regex Hole();
}
