using System.Text.Json;
using Json.Schema;
using ProcScript.Cli.Tests.Malformed;

namespace ProcScript.Cli.Tests.Verbs;

public sealed class NewVerbTests : IDisposable
{
    private readonly TemporaryFolder _disk = new();

    public void Dispose() => _disk.Dispose();

    [Theory]
    [InlineData("machine", "checked 1 file: no findings\n")]
    [InlineData("procedure", "checked 1 procedure in 1 file: all proven\n")]
    public async Task What_it_writes_passes_a_check(string kind, string summary)
    {
        var run = await CliRun.AtAsync(_disk.Path, "new", kind, "harrow_h2");

        Assert.Equal(new CliRun(ExitCode.Clean, "wrote harrow_h2.proc\nwrote procscript.json\n", ""), run);
        Assert.Contains($"\n{kind} harrow_h2 \"Harrow h2\"", _disk.Read("harrow_h2.proc"), StringComparison.Ordinal);
        Assert.Contains("\n// ", "\n" + _disk.Read("harrow_h2.proc"), StringComparison.Ordinal);
        Assert.Equal(new CliRun(ExitCode.Clean, summary, ""), await CliRun.AtAsync(_disk.Path, "check", ".", "--fail-on", "hint"));
    }

    [Fact]
    public async Task A_procedure_may_start_on_a_machine_that_is_there()
    {
        _disk.With("machines/m.proc", Sample.Machine).With("procscript.json", "{}");

        var run = await CliRun.AtAsync(_disk.Path, "new", "procedure", "seat_out", "--use", "machines/m.proc");

        Assert.Equal(new CliRun(ExitCode.Clean, "wrote seat_out.proc\n", ""), run);
        Assert.StartsWith("use \"machines/m.proc\"\n\nprocedure seat_out \"Seat out\" on m {\n", _disk.Read("seat_out.proc"), StringComparison.Ordinal);
        Assert.Equal(ExitCode.Clean, (await CliRun.AtAsync(_disk.Path, "check", "seat_out.proc", "--fail-on", "hint")).Code);
    }

    [Fact]
    public async Task Among_several_machines_one_is_chosen()
    {
        _disk.With("m.proc", "machine m \"M\" { }\nmachine n \"N\" { }\n").With("none.proc", "tool t \"T\"\n").With("procscript.json", "{}");

        var unclear = await NewProcedureAsync("a", "--use", "m.proc");
        var unknown = await NewProcedureAsync("a", "--use", "m.proc", "--on", "o");
        var none = await NewProcedureAsync("a", "--use", "none.proc");
        var nowhere = await NewProcedureAsync("a", "--on", "m");
        var chosen = await NewProcedureAsync("a", "--use", "m.proc", "--on", "n");

        Assert.Equal("procscript: 'm.proc' declares m, n: choose one with --on MACHINE.\n", unclear.Error);
        Assert.Equal("procscript: 'm.proc' knows no machine 'o'.\n", unknown.Error);
        Assert.Equal("procscript: 'none.proc' declares no machine.\n", none.Error);
        Assert.Equal("procscript: where is 'm' declared? Say so with --use FILE.\n", nowhere.Error);
        Assert.Equal(new CliRun(ExitCode.Clean, "wrote a.proc\n", ""), chosen);
    }

    [Theory]
    [InlineData("Harrow H2", "harrow_h2", "Harrow H2")]
    [InlineData("  The \"big\" {press} ", "the_big_press", "The \\\"big\\\" {{press}")]
    [InlineData("3-axis mill", "_3_axis_mill", "3-axis mill")]
    public async Task Of_a_title_a_name_is_made(string typed, string name, string title)
    {
        var run = await CliRun.AtAsync(_disk.Path, "new", "machine", typed);

        Assert.Equal(new CliRun(ExitCode.Clean, $"wrote {name}.proc\nwrote procscript.json\n", ""), run);
        Assert.Contains($"\nmachine {name} \"{title}\" {{\n", _disk.Read($"{name}.proc"), StringComparison.Ordinal);
        Assert.Equal(ExitCode.Clean, (await CliRun.AtAsync(_disk.Path, "check", ".", "--fail-on", "hint")).Code);
    }

    [Fact]
    public async Task The_settings_that_come_with_it_are_the_built_in_ones_and_the_schema_takes_them()
    {
        await CliRun.AtAsync(_disk.Path, "new", "machine", "harrow_h2");
        var text = _disk.Read("procscript.json");
        using var json = JsonDocument.Parse(text, new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip });
        var chosen = await CliRun.AtAsync(_disk.Path, "config", ".", "--color", "never");
        await File.WriteAllTextAsync(_disk["procscript.json"], "{}", TestContext.Current.CancellationToken);
        var builtIn = await CliRun.AtAsync(_disk.Path, "config", ".", "--color", "never");

        Assert.True(JsonSchema.FromText(File.ReadAllText(Path.Combine(Checkout.Root, "grammar", "settings.schema.json"))).Evaluate(json.RootElement).IsValid);
        Assert.All(text.Split('\n'), line => Assert.True(line.Length <= 120, line));
        Assert.Equal(ExitCode.Clean, chosen.Code);
        Assert.Contains("procscript.json:", chosen.Output, StringComparison.Ordinal);
        Assert.Equal(Values(builtIn.Output), Values(chosen.Output));
    }

    /// <summary>What holds, without where it comes from.</summary>
    private static IEnumerable<string> Values(string output) => output.Split('\n').Select(line => line.Split("built in")[0].Split("procscript.json:")[0].TrimEnd());

    [Theory]
    [InlineData("procscript.json")]
    [InlineData("../procscript.json")]
    [InlineData("../.git/HEAD")]
    public async Task Settings_that_are_there_are_left_as_they_are(string mark)
    {
        _disk.With("lib/note.txt", "").With(Path.Combine("lib", mark), "{}");

        var run = await CliRun.AtAsync(_disk["lib"], "new", "machine", "harrow_h2");

        Assert.Equal(new CliRun(ExitCode.Clean, "wrote harrow_h2.proc\n", ""), run);
        Assert.Equal(3, _disk.Files().Count());
    }

    [Fact]
    public async Task It_never_writes_over_a_file()
    {
        _disk.With("seat.proc", "mine");

        var run = await CliRun.AtAsync(_disk.Path, "new", "machine", "seat");

        Assert.Equal(new CliRun(ExitCode.Usage, "", "procscript: 'seat.proc' is there already; nothing was written.\n"), run);
        Assert.Equal("mine", _disk.Read("seat.proc"));
    }

    [Theory]
    [InlineData("../x")]
    [InlineData("x\\y")]
    [InlineData("-")]
    [InlineData("")]
    public async Task What_is_no_name_is_refused(string name)
    {
        var run = await CliRun.AtAsync(_disk.Path, "new", "machine", name);

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Equal($"procscript: '{name}' is no name: use letters, digits and underscores, and start with no digit; or write the title, such as \"Harrow H2\".\n", run.Error);
        Assert.Empty(_disk.Files());
    }

    [Theory]
    [InlineData("machine", "remove")]
    [InlineData("procedure", "example_machine")]
    public async Task A_name_that_is_taken_is_refused(string kind, string name)
    {
        var run = await CliRun.AtAsync(_disk.Path, "new", kind, name);

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.StartsWith($"procscript: nothing was written: a file with the name '{name}' would have a finding, PRC1", run.Error, StringComparison.Ordinal);
        Assert.Empty(_disk.Files());
    }

    private Task<CliRun> NewProcedureAsync(params string[] arguments) => CliRun.AtAsync(_disk.Path, ["new", "procedure", .. arguments]);
}
