using System.Collections.Immutable;
using ProcScript.LanguageServer.Completing;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Serving;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Model.Names;
using ProcScript.Syntax.Writing;

namespace ProcScript.LanguageServer.Features;

/// <summary>Tells how a sentence goes on: of a call the parameters, of any other what the grammar takes.</summary>
internal static class SignatureMethods
{
    /// <summary>Adds the method.</summary>
    public static void Add(MethodTable methods, Workspace workspace) =>
        methods.Request<TextDocumentPositionParams, SignatureHelp?>("textDocument/signatureHelp", (parameters, cancellation) => workspace.AskTextAsync<SignatureHelp>(
            parameters.TextDocument, (asked, _) => Task.FromResult(Tell(asked, asked.OffsetOf(parameters.Position))), cancellation));

    private static SignatureHelp? Tell(Asked asked, int offset)
    {
        var place = TypingPlace.At(asked, offset);
        return OfCall(asked, place) ?? OfSentence(place.Grammar);
    }

    private static SignatureHelp? OfCall(Asked asked, TypingPlace place)
    {
        var call = place.Frames.FirstOrDefault(frame => frame.Rule == "doCall");
        if (call?.Words is not ["do", var name, "(", .. var arguments]
            || arguments.Contains(")")
            || asked.Analysis.Names.Meaning(new NameUse(default, name, NameScope.Library, "", false), asked.Path) is not { } thing
            || CallMethods.Declared(asked, thing) is not var (path, procedure))
        {
            return null;
        }

        var text = asked.Analysis.Library.Trees[path].Text;
        var parameters = procedure.Parameters.Select(parameter => new ParameterInformation(text.Slice(parameter.Span))).ToImmutableArray();
        var label = $"{name}({string.Join(", ", parameters.Select(parameter => parameter.Label))})";
        return new SignatureHelp([new SignatureInformation(label, parameters)], 0, arguments.Count(word => word == ","));
    }

    /// <summary>The sentence as far as it is there, and what may come; what comes next is marked.</summary>
    private static SignatureHelp? OfSentence(WritingPlace place)
    {
        if (place.Sentence.IsEmpty || place.Rest.IsEmpty)
        {
            return null;
        }

        var written = string.Join(' ', place.Sentence);
        var parameters = place.Rest.Prepend(written).Select(part => new ParameterInformation(part)).ToImmutableArray();
        return new SignatureHelp([new SignatureInformation(string.Join(' ', parameters.Select(part => part.Label)), parameters)], 0, 1);
    }
}
