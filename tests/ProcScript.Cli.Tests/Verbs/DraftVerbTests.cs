using System.Text;
using System.Text.RegularExpressions;

namespace ProcScript.Cli.Tests.Verbs;

public sealed partial class DraftVerbTests : IDisposable
{
    private const string Strip = """
        procedure lid_off "Take the lid off" on tank {
          goal remove lid
          stage "Lid" { undo 6 m8 lid_bolts  remove lid }
          stage "Float" { undo 2 m8 float_bolts  remove float }
        }

        """;

    private readonly TemporaryFolder _disk = new();

    public void Dispose() => _disk.Dispose();

    [Fact]
    public async Task What_steps_name_is_declared_in_place_and_a_second_time_there_is_nothing_to_do()
    {
        _disk.With("a.proc", Strip);

        var diff = await RunAsync("draft", "--diff");
        Assert.Equal((ExitCode.Findings, Strip), (diff.Code, _disk.Read("a.proc")));
        Assert.Contains("+  part lid \"lid\" { held by 6 m8 as lid_bolts }\n", diff.Output, StringComparison.Ordinal);

        var run = await RunAsync("draft");
        Assert.Equal(
            (ExitCode.Clean, "drafted a.proc\ndeclared 6 things in 1 file; 1 question open: 'procscript check' lists them; put each right and take its comment out\n"),
            (run.Code, run.Output));
        Assert.Contains("behind lid  // draft: is the float behind the lid?\n", _disk.Read("a.proc"), StringComparison.Ordinal);
        Assert.Contains("  stage \"Lid\" { undo lid_bolts  remove lid }\n", _disk.Read("a.proc"), StringComparison.Ordinal);

        var again = await RunAsync("draft", "a.proc");
        Assert.Equal((ExitCode.Clean, true), (again.Code, again.Output.StartsWith("nothing to draft; 1 question open", StringComparison.Ordinal)));
        Assert.Equal(ExitCode.Clean, (await RunAsync("format", "--check", "a.proc")).Code);
    }

    [Fact]
    public async Task The_standard_input_goes_to_the_output()
    {
        var run = await CliRun.AtAsync(_disk.Path, ["draft", "-"], Encoding.UTF8.GetBytes(Strip));

        Assert.Equal((ExitCode.Clean, ""), (run.Code, run.Error));
        Assert.StartsWith("fastener m8 \"M8 bolt\" { thread M8x1.25 }\n", run.Output, StringComparison.Ordinal);
        Assert.Empty(_disk.Files());
    }

    [Fact]
    public async Task Every_card_of_a_pack_with_a_question_says_so_in_every_language()
    {
        _disk.With("a.proc", Strip);
        await RunAsync("draft");

        foreach (var (language, word) in new[] { ("en", "DRAFT"), ("de", "ENTWURF"), ("fr", "BROUILLON"), ("es", "BORRADOR"), ("pl", "SZKIC") })
        {
            Assert.Equal(ExitCode.Clean, (await RunAsync("build", ".", "--language", language, "-o", language)).Code);
            var page = _disk.Read($"{language}/lid_off/cards.html");
            var text = _disk.Read($"{language}/lid_off/cards.md");
            Assert.InRange(Cards().Count(page), 5, 50);
            Assert.Equal(Cards().Count(page), Regex.Count(page, $"<p class=\"draft\"><b>{word}</b>"));
            Assert.Contains($"@top-center {{ content: \"{word}\"", page, StringComparison.Ordinal);
            Assert.Equal(Regex.Count(text, "(?m)^##? "), Regex.Count(text, $@"(?m)^> \*\*{word}: "));
            Assert.Contains("is the float behind the lid?", page, StringComparison.Ordinal);
            Assert.Contains("is the float behind the lid?", text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_pack_without_questions_says_nothing_of_drafts()
    {
        _disk.With("a.proc", Strip);
        await RunAsync("draft");
        _disk.With("a.proc", _disk.Read("a.proc").Replace("  // draft: is the float behind the lid?", "", StringComparison.Ordinal));
        await RunAsync("build", ".", "-o", "packs");

        Assert.DoesNotContain("DRAFT", _disk.Read("packs/lid_off/cards.html") + _disk.Read("packs/lid_off/cards.md"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Notes_become_a_file_that_is_built_at_once_and_never_overwritten()
    {
        _disk.With("Fan notes.txt", "Machine: Fan\n1. Switch off the mains\n2. Undo 6 M5x12 guard bolts\n3. Take the guard off\n");

        var run = await RunAsync("draft", "--from", "Fan notes.txt");
        Assert.StartsWith("wrote fan_notes.proc: 3 steps read; ", run.Output, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Clean, (await RunAsync("build", ".", "-o", "packs")).Code);

        var again = await RunAsync("draft", "--from", "Fan notes.txt");
        Assert.Equal((ExitCode.Usage, "procscript: 'fan_notes.proc' is there already, and nothing was written; choose another name with --name NAME.\n"), (again.Code, again.Error));
        Assert.Equal(ExitCode.Findings, (await RunAsync("draft", "--from", "Fan notes.txt", "--name", "other", "--diff")).Code);
        Assert.DoesNotContain("other.proc", _disk.Files());
    }

    [Theory]
    [InlineData("part,qty,held by\nLid,1,\"6x M8x20 bolts\"\n")]
    [InlineData("part;qty;held by\r\nLid;1;6x M8x20 bolts\r\n")]
    [InlineData("part\tqty\theld by\t\nLid\t1\t6x M8x20 bolts\t\n")]
    public async Task A_list_of_parts_is_read_however_its_cells_are_parted(string list)
    {
        _disk.With("parts.csv", list);

        var run = await RunAsync("draft", "--from", "parts.csv", "--name", "tank");

        Assert.StartsWith("wrote tank.proc: 1 row read; ", run.Output, StringComparison.Ordinal);
        Assert.Contains("held by 6 m8x20 as lid_bolts", _disk.Read("tank.proc"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("empty.txt", "", "'empty.txt' is empty")]
    [InlineData("blank.txt", " \n\t\n", "'blank.txt' is empty")]
    [InlineData("dashes.txt", "---\n***\n", "'dashes.txt' says nothing: write one step a line.")]
    [InlineData("zero.txt", "undo\0bolts", "cannot read 'zero.txt': it is no text")]
    [InlineData("open.csv", "part,qty\n\"lid,2\n", "'open.csv' ")]
    [InlineData("much.csv", "part,qty\nlid,2,3\n", "'much.csv' has more cells than headings in row 2")]
    [InlineData("odd.csv", "colour,qty\nred,2\n", "'odd.csv' has no column that names the parts, such as \"part\" or \"description\"; there are: ")]
    [InlineData("head.csv", "part,qty\n", "'head.csv' has headings and no rows.")]
    public async Task Bad_lists_are_told_what_is_wrong(string file, string content, string message)
    {
        _disk.With(file, content);

        var run = (await RunAsync("draft", "--from", file)).AssertNoBug();

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.StartsWith("procscript: " + message, run.Error, StringComparison.Ordinal);
        Assert.Equal([file], _disk.Files());
    }

    [Theory]
    [InlineData("cannot read 'none.txt': there is no such file.", "--from", "none.txt")]
    [InlineData("'machine' is no name for a machine", "--from", "a.txt", "--name", "machine")]
    [InlineData("--from makes a file of its own", "--from", "a.txt", "a.proc")]
    [InlineData("--name goes with --from", "--name", "x")]
    [InlineData("there is no file or folder 'none.proc'.", "none.proc")]
    public async Task Wrong_usage_is_told(string message, params string[] arguments)
    {
        _disk.With("a.txt", "Take the lid off\n");

        var run = (await RunAsync(["draft", .. arguments])).AssertNoBug();

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.StartsWith("procscript: " + message, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_no_text_or_too_long_is_refused()
    {
        await File.WriteAllBytesAsync(Path.Combine(_disk.Path, "bin.txt"), [0x7F, 0x45, 0xFF, 0xFE], TestContext.Current.CancellationToken);
        _disk.With("long.txt", string.Concat(Enumerable.Repeat("Undo the bolts of the guard.\n", 360_000)));

        Assert.StartsWith("procscript: cannot read 'bin.txt': it is no text.", (await RunAsync("draft", "--from", "bin.txt")).Error, StringComparison.Ordinal);
        Assert.StartsWith("procscript: 'long.txt' is too long for a list", (await RunAsync("draft", "--from", "long.txt")).Error, StringComparison.Ordinal);
    }

    private Task<CliRun> RunAsync(params string[] arguments) => CliRun.AtAsync(_disk.Path, arguments);

    [GeneratedRegex("<section class=\"card")]
    private static partial Regex Cards();
}
