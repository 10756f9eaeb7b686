using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using ProcScript.LanguageServer.Tests.Clients;
using ProcScript.Model;
using ProcScript.Model.Names;
using ProcScript.Model.Sources;
using ProcScript.Syntax;
using ProcScript.Syntax.Tokens;

namespace ProcScript.LanguageServer.Tests.Typing;

/// <summary>
/// Types the demo library from the top, file by file, and looks at each word whether the server has it among the first that it offers. A
/// closing brace stands behind the cursor for each that is open, as editors put it there. The page of the language server gives the
/// figures, and what is no position: what the writer makes up.
/// </summary>
public sealed class TypingTests
{
    private const int Looked = 5;
    private const int Sampled = 60;

    /// <summary>What <c>src/ProcScript.LanguageServer/README.md</c> says of all positions; a sample may be off by a little.</summary>
    private static readonly int Promised = Depth.IsWhole ? 98 : 95;

    private static readonly string Root = Path.Combine(Checkout.Root, "procedures");

    [Slow]
    [Fact]
    public async Task After_its_first_letter_a_word_is_among_the_first_five()
    {
        var files = Directory.EnumerateFiles(Root, "*.proc", SearchOption.AllDirectories).Order(StringComparer.Ordinal)
            .ToDictionary(file => Path.GetRelativePath(Root, file).Replace('\\', '/'), File.ReadAllText);
        var library = LibraryBinder.Bind(new MemorySourceStore(files), TestContext.Current.CancellationToken);
        var names = new LibraryNames(library.Trees, new KnownNames());
        await using var client = await EditorClient.StartAsync(Root);
        var (asked, before, after) = (0, 0, 0);
        var misses = new StringBuilder();
        var number = 0;
        foreach (var (path, tree) in library.Trees)
        {
            var document = EditorDocument.Open(client, EditorClient.UriOf(Path.Combine(Root, path)), "");
            foreach (var word in TypedWord.In(tree, path, names).Where(_ => Depth.IsTaken(number++, Sampled)))
            {
                asked++;
                before += await RankAsync(client, document, tree, word, letters: 0) < Looked ? 1 : 0;
                if (await RankAsync(client, document, tree, word, letters: 1) < Looked)
                {
                    after++;
                }
                else
                {
                    misses.Append(CultureInfo.InvariantCulture, $"\n{path}:{tree.Text.LineAt(word.Start) + 1}: {word.Word}");
                }
            }

            document.Close();
        }

        var told = string.Create(CultureInfo.InvariantCulture, $"{asked} words, {100.0 * before / asked:0.0} % before and {100.0 * after / asked:0.0} % after the first letter");
        TestContext.Current.TestOutputHelper?.WriteLine(told + misses);
        Assert.True(asked > 50, told);
        Assert.True(100 * after >= Promised * asked, told + misses);
    }

    [Fact]
    public void The_page_of_the_language_server_promises_no_more() => Assert.Contains(
        "more than 98 of 100 words", File.ReadAllText(Path.Combine(Checkout.Root, "src/ProcScript.LanguageServer/README.md")), StringComparison.Ordinal);

    /// <summary>Where a word stands among what is offered once some of its letters are there.</summary>
    private static async Task<int> RankAsync(EditorClient client, EditorDocument document, SyntaxTree tree, TypedWord word, int letters)
    {
        var content = tree.Text.Content;
        var quote = word.Word[0] == '"' ? letters : 0;
        var at = word.Start + quote + letters;
        document.Set(content[..at] + Closed(tree, word.Start));
        var answer = await client.RequestAsync("textDocument/completion", new JsonObject { ["textDocument"] = document.Identifier, ["position"] = document.Position(at) });
        var rank = answer!["items"]!.AsArray()
            .OrderBy(item => item!["sortText"]!.GetValue<string>(), StringComparer.Ordinal)
            .Select(item => item!["label"]!.GetValue<string>())
            .Select(label => label.Replace("\"", "", StringComparison.Ordinal))
            .Where(label => label.StartsWith(word.Word.Trim('"')[..letters], StringComparison.OrdinalIgnoreCase))
            .ToList()
            .FindIndex(label => Writes(label, content.AsSpan(word.Start)));
        return rank < 0 ? int.MaxValue : rank;
    }

    /// <summary>Whether an item is the word, with or without what comes behind it.</summary>
    private static bool Writes(string label, ReadOnlySpan<char> content)
    {
        content = content.TrimStart('"');
        var word = content[..Math.Max(1, content.IndexOfAnyExcept(Letters))];
        return label.AsSpan().SequenceEqual(word)
            || (label.AsSpan().StartsWith(word) && label[word.Length] is ' ' or '[')
            || (content.StartsWith(label) && !Letters.Contains(content[label.Length]));
    }

    private static readonly System.Buffers.SearchValues<char> Letters =
        System.Buffers.SearchValues.Create("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ_0123456789µ");

    private static string Closed(SyntaxTree tree, int end)
    {
        var open = tree.Tokens
            .TakeWhile(token => token.Span.Start < end)
            .Where(token => token.Category == TokenCategory.Punctuation)
            .Sum(token => tree.Text.Content[token.Span.Start] switch { '{' => 1, '}' => -1, _ => 0 });
        return string.Concat(Enumerable.Repeat("\n}", open)) + "\n";
    }
}
