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
            if (await workspace.AskAsync(parameters.TextDocument, cancellation).ConfigureAwait(false) is not { } asked)
            {
                return new CompletionList(false, []);
            }

            var offset = asked.OffsetOf(parameters.Position);
            if (UsePathChoices.At(asked, offset) is { } paths)
            {
                return new CompletionList(false, [.. paths]);
            }

            var place = TypingPlace.At(asked, offset);
            return new CompletionList(false, place.IsInText ? [] : [.. Items(asked, offset, place, client)]);
        });

    private static IEnumerable<CompletionItem> Items(Asked asked, int offset, TypingPlace place, ClientProfile client) =>
        place.Words.IsEmpty
            ? Sentences.For(place.Block).Select(sentence => sentence.Item(client.TakesSnippets))
            : new NameChoices(asked, offset, place).Items();
}
