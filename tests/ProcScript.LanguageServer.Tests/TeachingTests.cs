using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using ProcScript.LanguageServer.Reference;
using ProcScript.LanguageServer.Tests.Clients;
using ProcScript.LanguageServer.Tests.Samples;
using ProcScript.Model;
using ProcScript.Model.Names;
using ProcScript.Model.Quantities;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Tokens;

namespace ProcScript.LanguageServer.Tests;

/// <summary>What teaches the language while one writes: hovers of its words, documentation of what is offered, how a sentence goes on.</summary>
public sealed partial class TeachingTests : IAsyncLifetime
{
    private readonly TemporaryLibrary _library = Sample.Library().With("catalog.proc", Sample.RichCatalog).With("fan/machine.proc", Sample.RichMachine);
    private EditorClient _client = null!;

    public async ValueTask InitializeAsync() => _client = await EditorClient.StartAsync(_library.Path);

    public async ValueTask DisposeAsync()
    {
        await _client.DisposeAsync();
        _library.Dispose();
    }

    [Fact]
    public void The_reference_tells_each_word_of_the_language_with_an_example()
    {
        var lexer = File.ReadAllText(Path.Combine(Checkout.Root, "grammar/ProcScriptLexer.g4"));
        var words = Keyword().Matches(lexer).Select(match => match.Groups["word"].Value).ToList();

        Assert.True(words.Count > 150, $"{words.Count} words");
        Assert.DoesNotContain(words, word => LanguageReference.Of(word) is not { Means.Length: > 0, Example.Length: > 0, Usage.Length: > 0 });
    }

    [Fact]
    public void The_reference_tells_each_unit() => Assert.DoesNotContain(
        Units.All.Where(unit => unit.Symbol.Length > 0).Select(Units.SpellingOf), unit => LanguageReference.Of(unit, "unit") is not { Sort: "unit" });

    [Fact]
    public async Task Each_word_of_a_text_that_has_them_all_has_its_hover()
    {
        var text = await File.ReadAllTextAsync(Path.Combine(Checkout.Root, "tests/editor/grammar/words.proc"), TestContext.Current.CancellationToken);
        var document = EditorDocument.Open(_client, EditorClient.UriOf(_library["words.proc"]), text);
        var silent = new List<string>();
        var told = 0;
        var library = LibraryBinder.Bind(new MemorySourceStore([KeyValuePair.Create("words.proc", text)]), TestContext.Current.CancellationToken);
        var names = new LibraryNames(library.Trees, new KnownNames()).In("words.proc")!;
        var tree = library.Trees["words.proc"];

        // It ends in what is no text of the language.
        var end = tree.Findings.Min(finding => finding.Primary.Span.Start);
        foreach (var token in tree.Tokens.Where(token => token.Category == TokenCategory.Keyword && token.Span.End <= end && names.At(token.Span.Start)?.Span != token.Span))
        {
            var hover = await _client.RequestAsync("textDocument/hover", new JsonObject { ["textDocument"] = document.Identifier, ["position"] = document.Position(token.Span.Start) });
            told++;
            if (hover is null)
            {
                silent.Add($"{document.Position(token.Span.Start)["line"]}: {text[token.Span.Start..token.Span.End]}");
            }
        }

        Assert.True(told > 300, $"{told} words");
        Assert.Equal("", string.Join("  ", silent));
    }

    [Theory]
    [InlineData("undo 2 of", 2, "`undo j`, strip verb")]
    [InlineData("work { repl", null, "`replace p`, action")]
    [InlineData("refit { check", null, "check")]
    [InlineData("stage \"Guard\"", 2, "is a card of the work pack")]
    public async Task A_word_of_the_language_is_told_where_it_stands(string mark, int? into, string expected)
    {
        var document = EditorDocument.Open(_client, EditorClient.UriOf(_library["fan/motor.proc"]), Sample.Job);

        Assert.Contains(expected, await HoverAsync(document, mark, into), StringComparison.Ordinal);
        Assert.Contains("](file:", await HoverAsync(document, mark, into), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("torque 22 ± 2 N.", "`N.m`, unit\n\nN·m, a torque")]
    [InlineData("torq", "`torque 22 ± 2 N.m`, property\n\nthe tightening torque")]
    [InlineData("tool soc", "tool `socket_13`")]
    public async Task Properties_and_units_are_told(string mark, string expected)
    {
        var document = EditorDocument.Open(_client, EditorClient.UriOf(_library["catalog.proc"]), Sample.RichCatalog);

        Assert.StartsWith(expected, await HoverAsync(document, mark), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_position_of_a_control_is_told()
    {
        var document = EditorDocument.Open(_client, EditorClient.UriOf(_library["fan/motor.proc"]), Sample.Job.Replace("isolate mains", "set speed to high  isolate mains", StringComparison.Ordinal));

        Assert.Equal("position `high` of `speed`: **high**\n\nPositions: `low`, `high`", await HoverAsync(document, "set speed to hi"));
    }

    [Theory]
    [InlineData("    isolate mains\n    ")]
    [InlineData("    undo 2 of ")]
    [InlineData("  work { replace ")]
    [InlineData("  goal ")]
    public async Task Each_item_that_is_offered_has_its_documentation(string mark)
    {
        var document = EditorDocument.Open(_client, EditorClient.UriOf(_library["fan/motor.proc"]), Sample.Job);
        var items = (await _client.RequestAsync("textDocument/completion", document.At(mark)))!["items"]!.AsArray();

        Assert.NotEmpty(items);
        Assert.All(items, item => Assert.NotEmpty(item!["documentation"]!["value"]!.GetValue<string>()));
        if (mark.EndsWith("\n    ", StringComparison.Ordinal))
        {
            Assert.Contains("strip verb", items.Single(item => item!["label"]!.GetValue<string>() == "undo")!["documentation"]!["value"]!.GetValue<string>(), StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("held by 4 ", "held by 4 name as name", 1)]
    [InlineData("held by 4 m8x25 as x ", "held by 4 m8x25 as x [at \"…\" | to|on|carries name]…", 1)]
    [InlineData("undo 4 ", "undo 4 of name", 1)]
    [InlineData("discard guard ", "discard guard because \"…\"", 1)]
    [InlineData("check \"It runs.\" ", "check \"It runs.\" [with name", 1)]
    public async Task A_sentence_tells_how_it_goes_on(string typed, string expected, int active)
    {
        var isJoint = typed.StartsWith("held", StringComparison.Ordinal);
        var (path, text, before) = isJoint
            ? ("fan/machine.proc", Sample.RichMachine, "    // here in the part\n")
            : ("fan/motor.proc", Sample.Job, "    remove motor\n");
        var at = text.IndexOf(before, StringComparison.Ordinal) + before.Length;
        var document = EditorDocument.Open(_client, EditorClient.UriOf(_library[path]), text.Insert(at, typed + "\n"));
        var help = await _client.RequestAsync("textDocument/signatureHelp", new JsonObject { ["textDocument"] = document.Identifier, ["position"] = document.Position(at + typed.Length) });

        Assert.StartsWith(expected, help!["signatures"]![0]!["label"]!.GetValue<string>(), StringComparison.Ordinal);
        Assert.Equal(active, help["activeParameter"]!.GetValue<int>());
    }

    private async Task<string> HoverAsync(EditorDocument document, string mark, int? into = null) =>
        (await _client.RequestAsync("textDocument/hover", document.At(mark, into)))!["contents"]!["value"]!.GetValue<string>();

    [GeneratedRegex(@"^[A-Z_]+\s*: '(?<word>[A-Za-z]+)' ;", RegexOptions.Multiline)]
    private static partial Regex Keyword();
}
