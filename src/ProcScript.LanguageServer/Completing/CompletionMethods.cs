using System.Collections.Immutable;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Reference;
using ProcScript.LanguageServer.Serving;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Syntax.Writing;

namespace ProcScript.LanguageServer.Completing;

/// <summary>Says what could be written at a place: what the grammar takes there, and of all names those that fit.</summary>
/// <param name="client">What the client can do.</param>
/// <param name="reference">What the reference says of words.</param>
internal sealed class CompletionMethods(ClientProfile client, ReferenceWords reference)
{
    /// <summary>Adds the method.</summary>
    public void Add(MethodTable methods, Workspace workspace) =>
        methods.Request<TextDocumentPositionParams, CompletionList>("textDocument/completion", async (parameters, cancellation) =>
        {
            // A verdict is not waited for: who types goes on.
            var items = await workspace.AskTextAsync<IEnumerable<CompletionItem>>(
                parameters.TextDocument, (asked, _) => Task.FromResult<IEnumerable<CompletionItem>?>(Items(asked, asked.OffsetOf(parameters.Position))), cancellation).ConfigureAwait(false);
            return new CompletionList(false, [.. items ?? []]);
        });

    private IEnumerable<CompletionItem> Items(Asked asked, int offset)
    {
        if (UsePathChoices.At(asked, offset) is { } paths)
        {
            return paths;
        }

        var place = TypingPlace.At(asked, offset);
        if (place.Grammar.IsInText)
        {
            return [];
        }

        return place.Grammar.Comment is { } comment ? SuppressionChoices.At(asked, offset, comment) : Items(asked, offset, place);
    }

    private IEnumerable<CompletionItem> Items(Asked asked, int offset, TypingPlace place)
    {
        var list = new ChoiceList();
        var within = place.Grammar.Next.Where(next => !next.Begins).ToList();
        var here = new Vicinity(asked, offset);
        var names = new NameChoices(here, place);
        var words = new WordChoices(here, place, names, client);
        foreach (var next in within.Where(next => next.Sort is NextWordSort.Name))
        {
            list.Add(names.For(next));
        }

        foreach (var next in within.Where(next => next.Sort is NextWordSort.Unit))
        {
            list.Add(UnitChoices.For(next));
        }

        // On a line of its own one rather begins than goes on.
        ImmutableArray<CompletionItem> beginnings = [.. words.Beginnings()];
        if (place.Grammar.IsOnNewLine)
        {
            list.Add(beginnings);
        }

        list.Add(words.Within(within.Where(next => next.Sort is NextWordSort.Keyword)));
        list.Add(within.Where(next => next.Sort is NextWordSort.Text).SelectMany(next => TextChoices.For(asked, offset, next)));
        list.Add(within.Where(next => next.Sort is NextWordSort.Number).SelectMany(next => TextChoices.Figures(asked, offset, next)));
        list.Add(within.Where(next => next.Sort is NextWordSort.Sign && next.Frames[0].Rule == "limit").Select(next => ChoiceList.Word(next.Word, "a limit")));
        list.Add(within.Where(next => next is { Sort: NextWordSort.Sign, Word: "{" }).Select(_ => Block()));
        list.Add(beginnings);
        list.Add(names.Blocked);
        var documentation = new ItemDocumentation(asked, offset, place, reference);
        return list.Items.Select(item => item with { Documentation = documentation.Of(item) });
    }

    private CompletionItem Block() => client.TakesSnippets
        ? ChoiceList.Word("{", "a block") with { InsertText = "{ $0 }", InsertTextFormat = CompletionItem.Snippet }
        : ChoiceList.Word("{", "a block");
}
