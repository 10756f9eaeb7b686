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

        Assert.Equal(new CliRun(ExitCode.Clean, "wrote harrow_h2.proc\n", ""), run);
        Assert.Contains($"\n{kind} harrow_h2 \"Harrow h2\"", _disk.Read("harrow_h2.proc"), StringComparison.Ordinal);
        Assert.Contains("\n// ", "\n" + _disk.Read("harrow_h2.proc"), StringComparison.Ordinal);
        Assert.Equal(new CliRun(ExitCode.Clean, summary, ""), await CliRun.AtAsync(_disk.Path, "check", ".", "--fail-on", "hint"));
    }

    [Fact]
    public async Task A_procedure_may_start_on_a_machine_that_is_there()
    {
        _disk.With("machines/m.proc", Sample.Machine);

        var run = await CliRun.AtAsync(_disk.Path, "new", "procedure", "seat_out", "--use", "machines/m.proc");

        Assert.Equal(new CliRun(ExitCode.Clean, "wrote seat_out.proc\n", ""), run);
        Assert.StartsWith("use \"machines/m.proc\"\n\nprocedure seat_out \"Seat out\" on m {\n", _disk.Read("seat_out.proc"), StringComparison.Ordinal);
        Assert.Equal(ExitCode.Clean, (await CliRun.AtAsync(_disk.Path, "check", "seat_out.proc", "--fail-on", "hint")).Code);
    }

    [Fact]
    public async Task Among_several_machines_one_is_chosen()
    {
        _disk.With("m.proc", "machine m \"M\" { }\nmachine n \"N\" { }\n").With("none.proc", "tool t \"T\"\n");

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

    [Fact]
    public async Task It_never_writes_over_a_file()
    {
        _disk.With("seat.proc", "mine");

        var run = await CliRun.AtAsync(_disk.Path, "new", "machine", "seat");

        Assert.Equal(new CliRun(ExitCode.Usage, "", "procscript: 'seat.proc' is there already; nothing was written.\n"), run);
        Assert.Equal("mine", _disk.Read("seat.proc"));
    }

    [Theory]
    [InlineData("9x")]
    [InlineData("a-b")]
    [InlineData("a b")]
    [InlineData("../x")]
    [InlineData("")]
    public async Task What_is_no_name_is_refused(string name)
    {
        var run = await CliRun.AtAsync(_disk.Path, "new", "machine", name);

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Equal($"procscript: '{name}' is no name: use letters, digits and underscores, and start with no digit.\n", run.Error);
        Assert.Empty(_disk.Files());
    }

    [Theory]
    [InlineData("remove")]
    [InlineData("m8x25")]
    public async Task A_name_that_is_taken_is_refused(string name)
    {
        var run = await CliRun.AtAsync(_disk.Path, "new", "machine", name);

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.StartsWith($"procscript: nothing was written: a file with the name '{name}' would have a finding, PRC1", run.Error, StringComparison.Ordinal);
        Assert.Empty(_disk.Files());
    }

    private Task<CliRun> NewProcedureAsync(params string[] arguments) => CliRun.AtAsync(_disk.Path, ["new", "procedure", .. arguments]);
}
