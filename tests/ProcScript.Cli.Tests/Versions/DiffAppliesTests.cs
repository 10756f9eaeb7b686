using CsCheck;
using ProcScript.Cli.Tests.Malformed;

namespace ProcScript.Cli.Tests.Versions;

/// <summary>What <c>--diff</c> prints, <c>git apply</c> takes, and it makes of the files what the verb itself would.</summary>
public sealed class DiffAppliesTests : IDisposable
{
    private const string Mark = "\uFEFF";

    private readonly GitFolder _git = new();

    public void Dispose() => _git.Dispose();

    public static TheoryData<string> Texts =>
    [
        "  tool lever \"lever\"\n",
        "tool lever \"lever\"",
        "tool lever \"lever\"\t\n",
        "\ttool lever   \"lever\"\n\n\n",
        "tool lever \"lever\"\r\n  tool bar \"bar\"\r\n",
        Mark + " tool lever \"lever\"\n",
        Mark + "tool lever \"lever\"\r\n\r\n\r\n\r\ntool bar \"bar\"",
        "tool lever \"lever\"\n\ntool bar \"bar\"\n\n\n\n\n" + Sample.Machine.Replace("\n", "\n   ", StringComparison.Ordinal),
        "  tool lever \"lever\"  // a\u00A0b\n",
    ];

    [Theory]
    [MemberData(nameof(Texts))]
    public Task A_layout_applies_as_it_would_be_written(string text) => AssertAppliesAsync("format", text, "sub folder/x \"1\".proc");

    [Theory]
    [InlineData("machine m { part cover { } part b { behind covr } }")]
    [InlineData("\uFEFF  machine m {\r\n\tpart a { mass 2 Kg  mass 2 kg }\r\n}\r\n")]
    public Task Fixes_apply_as_they_would_be_written(string text) => AssertAppliesAsync("fix --needs-look", text, "x.proc");

    [Fact]
    public async Task A_file_that_is_not_there_yet_applies_as_it_would_be_written()
    {
        var disk = _git.Disk.With("notes.txt", "1. Undo 6 M5x12 guard bolts\n2. Take the guard off\n");
        var printed = (await CliRun.AtAsync(disk.Path, "draft", "--from", "notes.txt", "--diff")).AssertNoBug().Output;
        Assert.Equal(ExitCode.Clean, (await CliRun.AtAsync(disk.Path, "draft", "--from", "notes.txt")).Code);
        var written = disk.Read("notes.proc");
        File.Delete(disk["notes.proc"]);

        disk.With("a.patch", printed);
        _git.Git("apply", "a.patch");

        Assert.Equal(written, disk.Read("notes.proc"));
    }

    [Fact]
    public async Task Whatever_blanks_a_text_has_its_layout_applies()
    {
        var blanks = Gen.OneOf<string>(" ", "  ", "\n", "\n\n\n", "\t", "\r\n", "\n\t ", " \n");
        await Gen.Select(blanks, blanks, blanks, blanks, Gen.OneOf<string>("", Mark)).SampleAsync(
            async gaps => await AssertAppliesAsync(
                "format", $"{gaps.Item5}tool a \"a\"{gaps.Item1}tool b{gaps.Item2}\"b\"{gaps.Item3}{Sample.Machine.Replace("\n", gaps.Item4, StringComparison.Ordinal)}{gaps.Item1}", "x.proc"),
            iter: 12,
            threads: 1);
    }

    private async Task AssertAppliesAsync(string verb, string text, string name)
    {
        var disk = _git.Disk.With(name, text);
        var printed = (await CliRun.AtAsync(disk.Path, [.. verb.Split(' '), name, "--diff"])).AssertNoBug().Output;
        var written = (await CliRun.AtAsync(disk.Path, [.. verb.Split(' '), name])).AssertNoBug();
        var after = File.ReadAllBytes(disk[name]);
        Assert.Contains(written.Code, new[] { ExitCode.Clean, ExitCode.Findings });

        disk.With(name, text).With("a.patch", printed);
        Assert.NotEqual(File.ReadAllBytes(disk[name]), after);
        _git.Git("apply", "a.patch");

        Assert.Equal(after, File.ReadAllBytes(disk[name]));
    }
}
