using System.Text.Json;
using ProcScript.Cli.Tests.Malformed;

namespace ProcScript.Cli.Tests.Verbs;

public sealed class BuildVerbTests : IDisposable
{
    private const string Broken = "procedure q \"Q\" on m { stage \"S\" { remove cover } }\n";

    private readonly TemporaryFolder _disk = new();

    public void Dispose() => _disk.Dispose();

    [Fact]
    public async Task Each_proven_procedure_gets_a_pack()
    {
        _disk.With("a.proc", Sample.Text);

        var run = await BuildAsync("a.proc", "-o", "out/packs");

        Assert.Equal(new CliRun(ExitCode.Clean, "wrote out/packs/p: cards.html, cards.md, plan.json\n1 pack written\n", ""), run);
        Assert.Equal(["a.proc", "out/packs/p/cards.html", "out/packs/p/cards.md", "out/packs/p/plan.json"], _disk.Files());
        Assert.Contains("Replace the pump", _disk.Read("out/packs/p/cards.html"), StringComparison.Ordinal);
        Assert.Contains("Replace the pump", _disk.Read("out/packs/p/cards.md"), StringComparison.Ordinal);
        using var plan = JsonDocument.Parse(_disk.Read("out/packs/p/plan.json"));
        Assert.Equal("p", plan.RootElement.GetProperty("job").GetString());
    }

    [Theory]
    [InlineData(null, null, false)]
    [InlineData("card", null, true)]
    [InlineData("flow", null, false)]
    [InlineData(null, "card", true)]
    [InlineData("flow", "card", false)]
    public async Task Cards_lie_as_the_settings_say_or_the_command_line(string? option, string? setting, bool apart)
    {
        _disk.With("library/a.proc", Sample.Text);
        if (setting is not null)
        {
            _disk.With("library/procscript.json", $$"""{ "cards": { "layout": "{{setting}}" } }""");
        }

        string[] chosen = option is null ? [] : ["--layout", option];
        var run = await BuildAsync(["library", "-o", "packs", "--format", "html", .. chosen]);

        Assert.Equal(ExitCode.Clean, run.Code);
        Assert.Equal(apart, _disk.Read("packs/p/cards.html").Contains("class=\"card-layout\"", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(null, null, "en")]
    [InlineData("pl", null, "pl")]
    [InlineData(null, "fr", "fr")]
    [InlineData("es", "fr", "es")]
    public async Task Packs_are_written_in_the_language_of_the_settings_or_the_command_line(string? option, string? setting, string language)
    {
        _disk.With("library/a.proc", Sample.Text);
        if (setting is not null)
        {
            _disk.With("library/procscript.json", $$"""{ "language": "{{setting}}" }""");
        }

        string[] chosen = option is null ? [] : ["--language", option];
        var run = await BuildAsync(["library", "-o", "packs", .. chosen]);

        Assert.Equal(ExitCode.Clean, run.Code);
        Assert.Contains($"<html lang=\"{language}\">", _disk.Read("packs/p/cards.html"), StringComparison.Ordinal);
        using var plan = JsonDocument.Parse(_disk.Read("packs/p/plan.json"));
        Assert.Equal(language, plan.RootElement.GetProperty("language").GetString());
    }

    [Fact]
    public async Task A_pack_in_another_language_has_its_pictures()
    {
        _disk.With("lid.svg", """<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 30 20"><rect width="30" height="20"/></svg>""");
        _disk.With("a.proc", """
            machine m "M" { part lid "lid" { figure "lid.svg" "The lid from above" } }
            procedure p "P" on m { stage "Lid" { remove lid } }
            """);

        await BuildAsync("a.proc", "-o", "packs", "--language", "de");

        Assert.Contains("data:image/svg+xml;base64,", _disk.Read("packs/p/cards.html"), StringComparison.Ordinal);
        Assert.Contains("packs/p/figures/lid.svg", _disk.Files());
    }

    [Fact]
    public async Task A_language_that_packs_are_not_written_in_is_refused_with_those_that_they_are()
    {
        _disk.With("a.proc", Sample.Text);

        var run = await BuildAsync("a.proc", "-o", "packs", "--language", "xx");

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Contains("packs are not written in 'xx': choose among en, de, fr, es, pl.", run.Error, StringComparison.Ordinal);
        Assert.Equal(["a.proc"], _disk.Files());
    }

    [Fact]
    public async Task A_layout_that_there_is_not_is_refused()
    {
        _disk.With("a.proc", Sample.Text);

        var run = await BuildAsync("a.proc", "-o", "packs", "--layout", "booklet");

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Contains("booklet", run.Error, StringComparison.Ordinal);
        Assert.Contains("flow", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nothing_is_written_for_a_procedure_that_is_not_proven()
    {
        _disk.With("a.proc", Sample.Text + Broken);

        var run = await BuildAsync("a.proc", "-o", "packs", "--format", "md");

        Assert.Equal(ExitCode.Findings, run.Code);
        Assert.Contains("error PRC3001", run.Output, StringComparison.Ordinal);
        Assert.EndsWith("\nwrote packs/p: cards.md\nq is not proven: nothing written\n1 pack written, 1 procedure not proven\n", run.Output, StringComparison.Ordinal);
        Assert.Equal(["a.proc", "packs/p/cards.md"], _disk.Files());
    }

    [Fact]
    public async Task A_pack_of_an_earlier_build_is_pointed_out()
    {
        _disk.With("a.proc", Sample.Text + Broken).With("packs/q/cards.md", "old");

        var run = await BuildAsync("a.proc", "-o", "packs", "--procedure", "q");

        Assert.Contains("q is not proven: nothing written; what stands in q is from an earlier build\n", run.Output, StringComparison.Ordinal);
        Assert.Equal("old", _disk.Read("packs/q/cards.md"));
    }

    [Theory]
    [InlineData("--labels", "70x36")]
    [InlineData(null, null)]
    public async Task Labels_for_sheets_of_labels_are_a_file_of_their_own(string? option, string? stock)
    {
        _disk.With("a.proc", """
            fastener bolt "bolt" { }
            machine m "M" { part lid "lid" { held by 4 bolt as lid_bolts { pattern none } } }
            procedure p "P" on m { goal remove lid  stage "S" { undo lid_bolts  remove lid } }
            """);
        if (option is null)
        {
            _disk.With("procscript.json", """{ "labels": "70x36" }""");
        }

        var run = await BuildAsync([".", "-o", "packs", "--format", "html", .. option is null ? [] : new[] { option, stock! }]);

        Assert.Contains("wrote packs/p: cards.html, labels.html\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("size: 210mm 297mm", _disk.Read("packs/p/labels.html"), StringComparison.Ordinal);
        Assert.Contains("labels.html", _disk.Read("packs/p/cards.html"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_sheet_that_nobody_knows_is_refused_with_those_that_are_known()
    {
        _disk.With("a.proc", Sample.Text);

        var run = await BuildAsync("a.proc", "-o", "packs", "--labels", "71x36");

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Contains("70x36", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Earlier_files_are_replaced_and_leave_nothing_behind()
    {
        _disk.With("a.proc", Sample.Text).With("packs/p/cards.md", "old").With("packs/p/notes.txt", "mine");

        await BuildAsync("a.proc", "-o", "packs", "--format", "md,json");

        Assert.Equal(["a.proc", "packs/p/cards.md", "packs/p/notes.txt", "packs/p/plan.json"], _disk.Files());
        Assert.NotEqual("old", _disk.Read("packs/p/cards.md"));
        Assert.Equal("mine", _disk.Read("packs/p/notes.txt"));
    }

    [Fact]
    public async Task The_same_sources_give_the_same_bytes()
    {
        _disk.With("a.proc", Sample.Text);

        await BuildAsync("a.proc", "-o", "one");
        await BuildAsync("a.proc", "-o", "two");

        Assert.All(new[] { "cards.html", "cards.md", "plan.json" }, file =>
            Assert.Equal(File.ReadAllBytes(_disk["one/p/" + file]), File.ReadAllBytes(_disk["two/p/" + file])));
    }

    [Fact]
    public async Task Options_choose_the_variant()
    {
        const string with = "option lamp \"lamp\"\nwhen lamp { part light \"light\" { held by 1 m8 as light_bolt } }";
        _disk.With("a.proc", Sample.MachineWith(with) + Sample.Procedure.Replace(
            "isolate battery", "isolate battery when lamp { undo light_bolt remove light }", StringComparison.Ordinal));

        await BuildAsync("a.proc", "-o", "packs", "--format", "md");
        await BuildAsync("a.proc", "-o", "packs", "--format", "md", "--with", "lamp");

        Assert.Equal(["a.proc", "packs/p+lamp/cards.md", "packs/p/cards.md"], _disk.Files());
        Assert.DoesNotContain("Remove the light", _disk.Read("packs/p/cards.md"), StringComparison.OrdinalIgnoreCase);
        Assert.Contains("light", _disk.Read("packs/p+lamp/cards.md"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Arguments_become_part_of_the_name()
    {
        _disk.With("a.proc", Sample.Machine + "procedure p(side in left, right) \"P {side}\" on m { stage \"S\" { task \"Look at the {side}.\" } }\n");

        await BuildAsync("a.proc", "-o", "packs", "--format", "json");

        Assert.Equal(["a.proc", "packs/p-left/plan.json", "packs/p-right/plan.json"], _disk.Files());
    }

    [Fact]
    public async Task Jobs_of_one_name_are_told_apart_by_their_machine()
    {
        _disk.With("a.proc", Sample.Text).With("b.proc", Sample.Text.Replace("machine m ", "machine n ", StringComparison.Ordinal).Replace("on m ", "on n ", StringComparison.Ordinal));

        await BuildAsync(".", "-o", "packs", "--format", "json");

        Assert.Equal(["a.proc", "b.proc", "packs/m.p/plan.json", "packs/n.p/plan.json"], _disk.Files());
    }

    [Fact]
    public async Task Jobs_that_cannot_be_told_apart_are_refused()
    {
        _disk.With("a.proc", Sample.Text).With("b.proc", Sample.Text);

        var run = await BuildAsync(".", "-o", "packs");

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.StartsWith("procscript: a.proc and b.proc would both be written to 'm.p'", run.Error, StringComparison.Ordinal);
        Assert.Equal(["a.proc", "b.proc"], _disk.Files());
    }

    [Theory]
    [InlineData("--procedure", "r", "there is no procedure 'r'; there are: p.")]
    [InlineData("--with", "lamp", "there is no option 'lamp': these machines have no options.")]
    [InlineData("--templates", "none", "there is no folder of templates 'none'.")]
    public async Task What_there_is_not_is_said(string option, string value, string message)
    {
        _disk.With("a.proc", Sample.Text);

        Assert.Equal(new CliRun(ExitCode.Usage, "", $"procscript: {message}\n"), await BuildAsync("a.proc", "-o", "packs", option, value));
        Assert.Equal(["a.proc"], _disk.Files());
    }

    [Fact]
    public async Task A_library_without_procedures_builds_nothing()
    {
        _disk.With("a.proc", Sample.Machine);

        Assert.Equal(new CliRun(ExitCode.Usage, "", "procscript: there is no procedure to build.\n"), await BuildAsync("a.proc", "-o", "packs"));
    }

    [Fact]
    public async Task An_unwritable_place_is_said_and_nothing_is_half_written()
    {
        _disk.With("a.proc", Sample.Text).With("file", "").WithFolder("packs/p/plan.json/x");

        var intoAFile = await BuildAsync("a.proc", "-o", "file");
        var overAFolder = await BuildAsync("a.proc", "-o", "packs");

        Assert.Equal(ExitCode.Usage, intoAFile.Code);
        Assert.StartsWith($"procscript: cannot write '{_disk["file/p/cards.html"]}': ", intoAFile.Error, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Usage, overAFolder.Code);
        Assert.StartsWith($"procscript: cannot write '{_disk["packs/p/plan.json"]}': ", overAFolder.Error, StringComparison.Ordinal);
        Assert.DoesNotContain(_disk.Files(), path => path.EndsWith(".tmp", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_shop_may_bring_its_own_templates()
    {
        _disk.With("a.proc", Sample.Text).With("ours/pack.md", "# {{ plan.title }}, our way\n");

        var run = await BuildAsync("a.proc", "-o", "packs", "--templates", "ours", "--format", "md");

        Assert.Equal("", run.Error);
        Assert.Equal("# Replace the pump, our way\n", _disk.Read("packs/p/cards.md"));
    }

    [Fact]
    public async Task A_template_that_is_wrong_is_said_with_its_place()
    {
        _disk.With("a.proc", Sample.Text).With("ours/pack.md", "# {{ for }}\n");

        var run = await BuildAsync("a.proc", "-o", "packs", "--templates", "ours");

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.StartsWith("procscript: template pack.md:1:", run.Error, StringComparison.Ordinal);
        Assert.Equal(["a.proc", "ours/pack.md"], _disk.Files());
    }

    [Fact]
    public async Task Errors_that_leave_no_procedure_are_shown()
    {
        _disk.With("a.proc", "procedure {");

        var run = await BuildAsync("a.proc", "-o", "packs");

        Assert.Equal(ExitCode.Findings, run.Code);
        Assert.Contains("error PRC1", run.Output, StringComparison.Ordinal);
        Assert.Equal(["a.proc"], _disk.Files());
    }

    private Task<CliRun> BuildAsync(params string[] arguments) => CliRun.AtAsync(_disk.Path, ["build", .. arguments]);
}
