using static ProcScript.Generate.TreeSitter.GrammarNode;

namespace ProcScript.Generate.TreeSitter;

/// <summary>The queries beside the one for colours: what has braces can be folded, and is set in.</summary>
internal static class QueryFile
{
    /// <summary>The first lines of every query.</summary>
    public static IReadOnlyList<string> Head { get; } = ["; Written by 'dotnet run --project src/ProcScript.Generate' from the lexer's and the parser's grammar."];

    /// <summary>The query for folding.</summary>
    public static string Folds(TreeSentences sentences) => string.Join('\n', [.. Head, "", $"[{Blocks(sentences)}] @fold", ""]);

    /// <summary>The query for indentation in Helix.</summary>
    public static string Indents(TreeSentences sentences) => string.Join('\n', [.. Head, "", $"[{Blocks(sentences)}] @indent", "\"}\" @outdent", ""]);

    private static string Blocks(TreeSentences sentences) => string.Join(' ', sentences.All
        .Where(sentence => sentence.Value.Symbols().Contains(new Symbol("LEFT_BRACE")))
        .Select(sentence => $"({sentences.NameOf(sentence.Key)})"));
}
