using ProcScript.Generate.TextMate;
using static ProcScript.Generate.TreeSitter.GrammarNode;

namespace ProcScript.Generate.TreeSitter;

/// <summary>
/// The query that colours a tree. Editors do not agree whether the first or the last pattern wins where two fit; here no two fit the same
/// node, since each word has its colour from the sentence right around it.
/// </summary>
/// <param name="sentences">The sentences.</param>
/// <param name="tokens">How their tokens are written.</param>
/// <param name="groups">The words, for what stands in no sentence.</param>
/// <param name="nameOf">What the editor calls a class.</param>
internal sealed class Highlights(TreeSentences sentences, TokenSpellings tokens, WordGroups groups, Func<Capture, string> nameOf)
{
    /// <summary>Sentences that have one colour as a whole, signs and all.</summary>
    private static readonly Dictionary<string, string> Whole = new(StringComparer.Ordinal)
    {
        ["number"] = "",
        ["unitName"] = "",
        ["hand"] = "",
        ["unit"] = Scope.Unit,
        ["threadValue"] = Scope.Mark,
        ["gradeValue"] = Scope.Mark,
    };

    /// <summary>Words whose class is told by what follows: the sentence, the word, its class and what is behind it.</summary>
    private static readonly (string Sentence, string Word, string Scope, string Next)[] ToldByNext =
    [
        ("refitProperty", "refit", Scope.Flow, "(property_block)"),
        ("refitProperty", "refit", Scope.Sentence, "[\"needs\" (alert) (figure)]"),
        ("refitRules", "refit", Scope.Flow, "(rule_block)"),
        ("refitRules", "refit", Scope.Sentence, "\"needs\""),
        ("stripStep", "strip", Scope.Sentence, "(alert)"),
        ("stripStep", "strip", Scope.Action, "(deed)"),
    ];

    private readonly Dictionary<string, string> _captures = Capture.All.ToDictionary(capture => capture.Scope, nameOf, StringComparer.Ordinal);

    /// <summary>Writes the query.</summary>
    public string Write() => string.Join('\n', [
        .. QueryFile.Head, "", .. Everywhere(),
        .. sentences.All.Where(sentence => !sentences.IsHidden(sentence.Key)).SelectMany(sentence => Within(sentence.Key, sentence.Value)),
        "", "; What the parser could make no sentence of.", .. InErrors(), ""]);

    private IEnumerable<string> Everywhere() =>
    [
        $"(comment) {At(Scope.Comment)}",
        $"(suppression) {At(Scope.Suppression)}",
        $"(text) {At(Scope.Text)}",
        $"(escape_sequence) {At(Scope.Escape)}",
        $"(placeholder) {At(Scope.Placeholder)}",
        $"[{Quoted("PLUS_MINUS", "PLUS", "RANGE", "AT_MOST", "AT_LEAST", "LESS_THAN", "MORE_THAN")}] {At(Scope.Operator)}",
        $"[{Quoted("COMMA")}] {At(Scope.Comma)}",
        $"[{Quoted("LEFT_BRACE", "RIGHT_BRACE", "LEFT_BRACKET", "RIGHT_BRACKET", "LEFT_PAREN", "RIGHT_PAREN")}] {At(Scope.Bracket)}",
        .. Whole.Where(whole => whole.Value.Length > 0).Select(whole => $"({sentences.NameOf(whole.Key)}{NotAText(whole.Key)}) {At(whole.Value)}"),
        "",
    ];

    private IEnumerable<string> Within(string sentence, GrammarNode body)
    {
        if (Whole.ContainsKey(sentence))
        {
            yield break;
        }

        var node = sentences.NameOf(sentence);
        var words = body.Symbols().Where(symbol => symbol.IsToken).Select(symbol => tokens.WordOf(symbol.Name)).OfType<string>()
            .Where(word => ToldByNext.All(told => (told.Sentence, told.Word) != (sentence, word))).Distinct();
        foreach (var group in words.GroupBy(word => ClassOf.Word(sentence, word)))
        {
            yield return $"({node} {OneOf(group.Select(word => $"\"{word}\""))} {At(group.Key)})";
        }

        foreach (var told in ToldByNext.Where(told => told.Sentence == sentence))
        {
            yield return $"({node} \"{told.Word}\" {At(told.Scope)} {told.Next})";
        }

        foreach (var (name, field) in Named(body, null).Distinct())
        {
            var label = field is null ? "" : $"{field}: ";
            switch (name)
            {
                case "name" or "wordPosition":
                    if (sentence is not "reference")
                    {
                        yield return $"({node} {label}(identifier) {At(ClassOf.Name(sentence, field))})";
                    }

                    break;
                case "reference":
                    yield return $"({node} {label}(reference (identifier) {At(ClassOf.Reference(field))}))";
                    break;
                case "number":
                    yield return $"({node} (number) {At(Scope.Number)})";
                    break;
                case "INTEGER" or "DECIMAL" or "SCREW_SIZE":
                    yield return $"({node} ({TreeTokens.NodeOf(name)}) {At(Scope.Number)})";
                    break;
            }
        }
    }

    private IEnumerable<string> InErrors()
    {
        HashSet<string> seen = new(StringComparer.Ordinal);
        foreach (var (scope, all) in groups.Alone)
        {
            IReadOnlyList<string> words = [.. all.Where(seen.Add)];
            if (words.Count > 0)
            {
                yield return $"(ERROR {OneOf(words.Select(word => $"\"{word}\""))} {At(scope)})";
                yield return $"((ERROR (identifier) {At(scope)}) (#match? {At(scope)} \"^({string.Join('|', words)})$\"))";
            }
        }

        yield return $"((ERROR (identifier) {At(Scope.Item)}) (#not-match? {At(Scope.Item)} \"^({string.Join('|', seen)})$\"))";
        yield return $"(ERROR (unit_name) {At(Scope.Unit)})";
        yield return $"(ERROR (plain_text) {At(Scope.Text)})";
        yield return $"(ERROR (reference (identifier) {At(Scope.Item)}))";
        yield return $"(ERROR [(number) (integer) (decimal) (screw_size)] {At(Scope.Number)})";
    }

    /// <summary>The sentences and tokens right within a sentence, with what it calls them.</summary>
    private static IEnumerable<(string Name, string? Field)> Named(GrammarNode node, string? field) => node switch
    {
        Symbol symbol => [(symbol.Name, field)],
        Alias { Name: "position" } => [],
        Field named => Named(named.Piece, named.Name),
        _ => node.Parts.SelectMany(part => Named(part, field)),
    };

    private string NotAText(string sentence) => Named(sentences.All[sentence], null).Any(part => part.Field is "text") ? " !text" : "";

    private string At(string scope) => $"@{_captures[scope]}";

    private string Quoted(params IEnumerable<string> names) => string.Join(' ', names.SelectMany(tokens.Of).Select(sign => $"\"{sign}\""));

    private static string OneOf(IEnumerable<string> nodes) => nodes.ToList() is [var only] ? only : $"[{string.Join(' ', nodes)}]";
}
