using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Serving;
using ProcScript.LanguageServer.Workspaces;

namespace ProcScript.LanguageServer.Features;

/// <summary>Says what could be written at a place: names that are in sight and can be worked on there, and the words of the block.</summary>
internal static class CompletionMethods
{
    /// <summary>Adds the method.</summary>
    public static void Add(MethodTable methods, Workspace workspace, ClientProfile client) =>
        methods.Request<TextDocumentPositionParams, CompletionList>("textDocument/completion", async (parameters, cancellation) =>
        {
            // A verdict is not waited for: who types goes on.
            var items = await workspace.AskTextAsync<IEnumerable<CompletionItem>>(
                parameters.TextDocument, (asked, _) => Task.FromResult<IEnumerable<CompletionItem>?>(Items(asked, asked.OffsetOf(parameters.Position), client)), cancellation).ConfigureAwait(false);
            return new CompletionList(false, [.. items ?? []]);
        });

    private static IEnumerable<CompletionItem> Items(Asked asked, int offset, ClientProfile client)
    {
        if (UsePathChoices.At(asked, offset) is { } paths)
        {
            return paths;
        }

        var place = TypingPlace.At(asked, offset);
        return place.IsInText ? [] : Items(asked, offset, place, client);
    }

    private static IEnumerable<CompletionItem> Items(Asked asked, int offset, TypingPlace place, ClientProfile client) =>
        place.Words.IsEmpty
            ? Sentences.For(place.Block).Select(sentence => sentence.Item(client.TakesSnippets))
            : new NameChoices(asked, offset, place).Items();
}
