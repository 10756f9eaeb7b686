using ProcScript.Generate.TextMate;

namespace ProcScript.Generate.TreeSitter;

/// <summary>
/// The grammar that tree-sitter makes a parser of, the words that its scanner knows, and the queries of the editors. The parser itself
/// is made by tree-sitter's own program: <c>grammar/tree-sitter/generate.sh</c>.
/// </summary>
internal sealed class TreeSitterGenerator : IGenerator
{
    private const string Folder = "grammar/tree-sitter";
    private const string HelixQueries = "src/editors/helix/runtime/queries/procscript";

    public string Name => "tree-sitter";

    public string? OwnedFolder => null;

    public IReadOnlyList<GeneratedFile> Generate(string root)
    {
        var tokens = TokenSpellings.Read(root);
        TreeSentences sentences = new(Sentences.Read(root), tokens);
        var words = LexerWords.Read(root);
        WordGroups groups = new(words, ParserWords.Read(root, words));
        return
        [
            new($"{Folder}/grammar.js", new GrammarScript(sentences, tokens).Write()),
            new($"{Folder}/src/sentence_words.h", Words(sentences.SentenceStarts)),
            new($"{Folder}/queries/highlights.scm", new Highlights(sentences, tokens, groups, capture => capture.Plain).Write()),
            new($"{Folder}/queries/folds.scm", QueryFile.Folds(sentences)),
            new($"{HelixQueries}/highlights.scm", new Highlights(sentences, tokens, groups, capture => capture.Helix).Write()),
            new($"{HelixQueries}/indents.scm", QueryFile.Indents(sentences)),
        ];
    }

    private static string Words(IReadOnlyList<string> words) => string.Concat([
        "// Written by 'dotnet run --project src/ProcScript.Generate' from the lexer's and the parser's grammar.\n",
        "// The words that a sentence begins with, and that are no name anywhere.\n",
        "static const char *const sentence_words[] = {\n",
        .. words.Order(StringComparer.Ordinal).Select(word => $"    \"{word}\",\n"),
        "};\n",
    ]);
}
