using System.Collections.Frozen;
using ProcScript.LanguageServer.Features;
using ProcScript.LanguageServer.Jobs;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Reference;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Model.Catalog;
using ProcScript.Syntax.Writing;

namespace ProcScript.LanguageServer.Completing;

/// <summary>What stands beside an item that is offered: of a word what the reference says, of a name what it names.</summary>
/// <param name="asked">The document.</param>
/// <param name="offset">Where one types.</param>
/// <param name="place">The same as the grammar sees it.</param>
/// <param name="reference">What the reference says of words.</param>
internal sealed class ItemDocumentation(Asked asked, int offset, TypingPlace place, ReferenceWords reference)
{
    private readonly ILookup<string, NextWord> _next = place.Grammar.Next.Where(next => next.Sort == NextWordSort.Keyword).ToLookup(next => next.Word.Split(' ')[0], StringComparer.Ordinal);

    private FrozenDictionary<string, Kind> Kinds => field ??= asked.Analysis.Library.Kinds.DistinctBy(kind => kind.Name).ToFrozenDictionary(kind => kind.Name, StringComparer.Ordinal);

    /// <summary>The documentation.</summary>
    public MarkupContent Of(CompletionItem item) => MarkupContent.Markdown(OfWord(item) ?? OfName(item.Label) ?? (item.Detail is { Length: > 0 } detail ? $"`{item.Label}`: {detail}" : $"`{item.Label}`"));

    private string? OfWord(CompletionItem item) => item.Kind switch
    {
        ChoiceList.Keyword or ChoiceList.Snippet => reference.Tell(item.Label, _next[item.Label.Split(' ')[0]].SelectMany(next => next.Frames), place.Block),
        ChoiceList.Unit => reference.TellUnit(item.Label),
        _ => null,
    };

    private string? OfName(string name) =>
        Machine?.Items.GetValueOrDefault(name) is { } item ? ItemWords.Tell(item, null)
        : Machine?.Places.FirstOrDefault(place => place.Name == name) is { } area ? ItemWords.Tell(area)
        : Kinds.TryGetValue(name, out var kind) ? ItemWords.Tell(kind)
        : null;

    private Model.Machines.Machine? Machine => field ??= JobsInText.MachineAt(asked, offset);
}
