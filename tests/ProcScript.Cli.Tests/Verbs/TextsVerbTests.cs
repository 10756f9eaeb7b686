namespace ProcScript.Cli.Tests.Verbs;

public sealed class TextsVerbTests : IDisposable
{
    private const string Press = """
        machine press "press" { part guard "guard" }
        procedure guard_off "Take the guard off" on press { goal remove guard  stage "Guard" { remove guard } }

        """;

    private readonly TemporaryFolder _disk = new();

    public void Dispose() => _disk.Dispose();

    [Fact]
    public async Task Texts_go_to_a_translator_and_come_back_into_the_pack()
    {
        _disk.With("lib/procscript.json", "{}").With("lib/press.proc", Press);

        var export = await CliRun.AtAsync(_disk.Path, "texts", "export", "lib", "--language", "de", "-o", "to-do.xlf");
        Assert.Equal(new CliRun(ExitCode.Clean, "wrote to-do.xlf: 4 texts, 0 of them translated into de\n", ""), export);
        _disk.With("done.xlf", _disk.Read("to-do.xlf").Replace("<source>guard</source>", "<source>guard</source><target>Schutz</target>", StringComparison.Ordinal));
        var import = await CliRun.AtAsync(_disk.Path, "texts", "import", "lib", "--language", "de", "--from", "done.xlf");
        Assert.Equal(new CliRun(ExitCode.Clean, "wrote lib/texts/de.xlf: 1 translation taken in, 1 in all\n", ""), import);
        var build = await CliRun.AtAsync(_disk.Path, "build", "lib", "-o", "packs", "--language", "de");

        Assert.Equal(ExitCode.Clean, build.Code);
        Assert.Contains("1. Schutz ausbauen", _disk.Read("packs/guard_off/cards.md"), StringComparison.Ordinal);
        Assert.Contains("Take the guard off (en)", _disk.Read("packs/guard_off/cards.md"), StringComparison.Ordinal);
        Assert.Contains("<span lang=\"en\" class=\"original\">Take the guard off</span>", _disk.Read("packs/guard_off/cards.html"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_changed_while_it_was_away_is_left_out_and_told()
    {
        _disk.With("lib/procscript.json", "{}").With("lib/press.proc", Press);
        await CliRun.AtAsync(_disk.Path, "texts", "export", "lib", "--language", "de", "-o", "to-do.xlf");
        _disk.With("done.xlf", _disk.Read("to-do.xlf")
            .Replace("<source>guard</source>", "<source>guard</source><target>Schutz</target>", StringComparison.Ordinal)
            .Replace("<source>press</source>", "<source>press</source><target>Presse</target>", StringComparison.Ordinal));
        _disk.With("lib/press.proc", Press.Replace("\"guard\"", "\"left guard\"", StringComparison.Ordinal));

        var import = await CliRun.AtAsync(_disk.Path, "texts", "import", "lib", "--language", "de", "--from", "done.xlf");

        Assert.Equal(ExitCode.Findings, import.Code);
        Assert.Contains("1 translation taken in, 1 in all", import.Output, StringComparison.Ordinal);
        Assert.Contains("left out press.proc: machine.press:part.guard:title", import.Output + import.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("Schutz", _disk.Read("lib/texts/de.xlf"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("no XML at all", "cannot read 'done.xlf': it is no XML")]
    [InlineData("<xliff version=\"2.1\" srcLang=\"en\" trgLang=\"fr\" xmlns=\"urn:oasis:names:tc:xliff:document:2.0\"/>", "'done.xlf' is a translation into 'fr', and 'de' is asked for.")]
    public async Task A_file_that_cannot_be_taken_in_is_refused(string text, string why)
    {
        _disk.With("lib/procscript.json", "{}").With("lib/press.proc", Press).With("done.xlf", text);

        var import = await CliRun.AtAsync(_disk.Path, "texts", "import", "lib", "--language", "de", "--from", "done.xlf");

        Assert.Equal(ExitCode.Usage, import.Code);
        Assert.Contains(why, import.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("lib/texts/de.xlf", _disk.Files());
    }
}
