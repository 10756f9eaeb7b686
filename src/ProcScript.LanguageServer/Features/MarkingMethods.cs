using System.Collections.Immutable;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Serving;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Model.Names;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.LanguageServer.Features;

/// <summary>Tells what each name of a document is, by what it means and not by how it looks.</summary>
internal static class MarkingMethods
{
    private const int Declaration = 1;

    /// <summary>The sorts, in the order of their numbers.</summary>
    public static SemanticTokensLegend Legend { get; } = new(
        ["class", "function", "struct", "type", "property", "variable", "event", "enum", "enumMember", "parameter"], ["declaration"]);

    /// <summary>Adds the method.</summary>
    public static void Add(MethodTable methods, Workspace workspace) =>
        methods.Request<DocumentParams, SemanticTokens>("textDocument/semanticTokens/full", async (parameters, cancellation) =>
            await workspace.AskAsync(parameters.TextDocument, cancellation).ConfigureAwait(false) is { } asked ? Mark(asked) : new SemanticTokens([]));

    private static SemanticTokens Mark(Asked asked)
    {
        var sorts = new Dictionary<string, Dictionary<TextSpan, string>>(StringComparer.Ordinal);
        var data = ImmutableArray.CreateBuilder<int>();
        var last = default(Position);
        foreach (var use in asked.Analysis.Names.In(asked.Path)!.All)
        {
            if (Sort(asked, use, sorts) is not { } sort)
            {
                continue;
            }

            var range = asked.Places.RangeOf(use.Span);
            var onSameLine = range.Start.Line == last.Line;
            data.AddRange(
                range.Start.Line - last.Line,
                range.Start.Character - (onSameLine ? last.Character : 0),
                range.End.Character - range.Start.Character,
                Legend.TokenTypes.IndexOf(sort),
                use.IsDeclaration ? Declaration : 0);
            last = range.Start;
        }

        return new SemanticTokens(data.ToImmutable());
    }

    private static string? Sort(Asked asked, NameUse use, Dictionary<string, Dictionary<TextSpan, string>> sorts)
    {
        if (use.Scope == NameScope.Block)
        {
            return "parameter";
        }

        if (asked.Analysis.Names.Meaning(use, asked.Path) is not { } thing)
        {
            return null;
        }

        if (!sorts.TryGetValue(thing.Path, out var declared))
        {
            sorts[thing.Path] = declared = Declared(asked.Analysis.Library.Trees[thing.Path].Root);
        }

        return declared.GetValueOrDefault(asked.Analysis.Names.Declarations(thing).First().Span);
    }

    private static Dictionary<TextSpan, string> Declared(FileSyntax file)
    {
        var sorts = new Dictionary<TextSpan, string>();
        foreach (var node in file.Declarations.SelectMany(declaration => declaration is ProcedureSyntax ? [declaration] : declaration.DescendantsAndSelf()))
        {
            if (OutlineEntry.Of(node) is { } entry && Sort(node) is { } sort)
            {
                sorts[entry.NamePlace] = sort;
            }
        }

        return sorts;
    }

    private static string? Sort(SyntaxNode node) => node switch
    {
        MachineSyntax => "class",
        ProcedureSyntax => "function",
        CatalogSyntax { Keyword.Text: "tool" or "supply" or "certificate" } => "type",
        CatalogSyntax => "struct",
        PartSyntax => "property",
        JointSyntax or CoverSyntax or FluidSyntax => "variable",
        EnergySyntax => "event",
        ControlSyntax => "enum",
        PlaceSyntax => "namespace",
        OptionSyntax => "enumMember",
        _ => null,
    };
}
