using System.Text.Json;

namespace ProcScript.Cli.Tests.Verbs;

/// <summary><c>job</c> and the verbs below it, from what is typed to what lies in the job's folder.</summary>
public sealed class JobVerbTests : IDisposable
{
    private const string Job = "jobs/77-P9-pump_out";

    private const string Pump = """
        tool socket_13 "13 mm socket" { size 13 mm }
        clip pin "pin"
        connector two "2-way plug"
        fastener m8 "M8 bolt" { thread M8x1.25  drive socket_13  torque 20 ± 2 N.m  grade unknown }
        machine tank "water tank" {
          energy mains "mains, 230 V" { isolate "Pull the mains plug." verify "Measure at the terminals." expect < 1 V  restore "Plug in." }
          part lid "lid" { held by 4 m8 as lid_bolts }
          part pump "pump" { behind lid  held by 3 pin as pump_pins  wired by 1 two as pump_plug on mains }
        }
        procedure pump_out "Take the pump out" on tank {
          goal remove pump
          stage "Lid" { isolate mains  undo lid_bolts  remove lid }
          stage "Pump" { unplug pump_plug  release pump_pins  remove pump }
        }

        """;

    private readonly TemporaryFolder _disk = new();

    public JobVerbTests() => _disk.With("tank.proc", Pump);

    public void Dispose() => _disk.Dispose();

    [Fact]
    public async Task A_job_is_opened_done_closed_and_printed()
    {
        await OpenAsync();
        Assert.Equal(Pump, _disk.Read($"{Job}/library/tank.proc"));
        Assert.Contains("Take the pump out", _disk.Read($"{Job}/pack/cards.html"), StringComparison.Ordinal);

        var steps = Plan().GetProperty("refit").EnumerateArray().Last().GetProperty("steps").EnumerateArray().Last().GetProperty("number").GetInt32();
        await GoodAsync("done", Job, "1", "--by", "Kern");
        await GoodAsync("reading", Job, "1", "0.2 V", "--by", "Kern");
        await GoodAsync(["done", Job, .. Enumerable.Range(2, steps - 1).Select(step => $"{step}"), "--by", "Brandt"]);
        var closed = await GoodAsync("close", Job, "--by", "Brandt");
        await GoodAsync("report", Job);
        await GoodAsync("report", Job, "--format", "md", "-o", "done.md");

        Assert.Contains("closed", closed.Output, StringComparison.Ordinal);
        Assert.Contains("<h1>Take the pump out</h1>", _disk.Read($"{Job}/as-done.html"), StringComparison.Ordinal);
        Assert.Contains("Kern, Brandt", _disk.Read("done.md"), StringComparison.Ordinal);
        Assert.Contains("0.2 V", _disk.Read("done.md"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_open_keeps_a_job_from_being_closed_unless_somebody_signs_for_it()
    {
        await OpenAsync();
        await GoodAsync("done", Job, "1", "2", "--by", "Kern");
        var refused = await RunAsync("close", Job, "--by", "Kern");
        var closed = await GoodAsync("close", Job, "--despite", "the customer fetches it in pieces", "--by", "Kern");
        await GoodAsync("report", Job);

        Assert.Equal(ExitCode.Findings, refused.Code);
        Assert.Contains("mains, 230 V: isolated", refused.Output, StringComparison.Ordinal);
        Assert.Contains("bag 1 holds 4 × M8 bolt", refused.Output, StringComparison.Ordinal);
        Assert.Contains("the reading is missing", refused.Output, StringComparison.Ordinal);
        Assert.Contains("although", closed.Output, StringComparison.Ordinal);
        Assert.Contains("the customer fetches it in pieces", _disk.Read($"{Job}/as-done.html"), StringComparison.Ordinal);
        Assert.Contains("mains, 230 V: isolated", _disk.Read($"{Job}/as-done.html"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_step_out_of_order_is_taken_and_what_it_means_is_said()
    {
        await OpenAsync();
        var run = await GoodAsync("done", Job, "4", "--by", "Kern");

        Assert.Contains("out of order", run.Output, StringComparison.Ordinal);
        Assert.Contains("! the mains, 230 V is live", run.Output, StringComparison.Ordinal);
        Assert.Contains("'procscript job refit'", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_bolt_left_off_under_the_lid_is_told_and_new_cards_lead_to_it()
    {
        await OpenAsync();
        await GoodAsync(["done", Job, "1", "2", "3", "4", "5", "6", "7", "--by", "Kern"]);
        var pins = Step("refit", "pump_pins");
        await GoodAsync("done", Job, $"{pins}", "--count", "2", "--by", "Kern");
        var lid = Step("refit", "lid");
        var hidden = await GoodAsync(["done", Job, .. Enumerable.Range(pins + 1, lid - pins).Select(step => $"{step}"), "--by", "Kern"]);
        var refit = await GoodAsync("refit", Job, "--by", "Kern");
        var cards = _disk.Read($"{Job}/pack-2/cards.md");
        var status = await GoodAsync("status", Job);

        Assert.Contains("! 3 × pin (pump) is 2 of 3 on, behind the lid", hidden.Output, StringComparison.Ordinal);
        Assert.Contains("to open again", refit.Output, StringComparison.Ordinal);
        Assert.Contains("done before", cards, StringComparison.Ordinal);
        Assert.Contains("Remove the lid", status.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_newer_text_is_carried_over_where_the_machine_stands_as_it_knows()
    {
        await OpenAsync();
        await GoodAsync("done", Job, "1", "2", "--by", "Kern");
        _disk.With("tank.proc", Pump.Replace("remove lid }", "remove lid  task \"Wipe the rim.\" }", StringComparison.Ordinal));
        var dry = await GoodAsync("rebase", Job, "--in", "tank.proc", "--dry-run", "--by", "Kern");
        var run = await GoodAsync("rebase", Job, "--in", "tank.proc", "--by", "Kern");
        var status = await GoodAsync("status", Job);

        Assert.Contains("+ step 4: Wipe the rim.", dry.Output, StringComparison.Ordinal);
        Assert.Contains("2 of 13 steps are done", run.Output, StringComparison.Ordinal);
        Assert.Contains("2 of 13 steps done", status.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_newer_text_that_does_not_know_what_is_off_is_refused()
    {
        await OpenAsync();
        await GoodAsync("done", Job, "1", "2", "3", "4", "--by", "Kern");
        _disk.With("tank.proc", Pump.Replace("  wired by 1 two as pump_plug on mains", "", StringComparison.Ordinal).Replace("unplug pump_plug  ", "", StringComparison.Ordinal));

        var run = await RunAsync("rebase", Job, "--in", "tank.proc", "--by", "Kern");

        Assert.Equal(ExitCode.Findings, run.Code);
        Assert.Contains("the newer text knows nothing of it", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_changed_journal_is_told_and_nothing_more_is_written_into_it()
    {
        await OpenAsync();
        await GoodAsync("done", Job, "1", "2", "--by", "Kern");
        var journal = _disk.Read($"{Job}/journal.jsonl");
        _disk.With($"{Job}/journal.jsonl", journal.Replace("\"step\":1", "\"step\":3", StringComparison.Ordinal));

        var status = await RunAsync("status", Job);
        var done = await RunAsync("done", Job, "3", "--by", "Kern");

        Assert.Contains("damaged in line 2", status.Error, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Findings, status.Code);
        Assert.Equal(ExitCode.Usage, done.Code);
        Assert.Contains("line 2", done.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("say who", "done", Job, "1")]
    [InlineData("there is no step 99", "done", Job, "99", "--by", "K")]
    [InlineData("is no job", "done", "nowhere", "1", "--by", "K")]
    [InlineData("did you mean `pump_pins`", "broke", Job, "pump_pin", "--by", "K")]
    [InlineData("nobody can unplug `lid`", "did", Job, "unplug", "lid", "--by", "K")]
    [InlineData("is no verb that changes a machine", "did", Job, "admire", "lid", "--by", "K")]
    [InlineData("has no bag 9", "bag", Job, "9", "--count", "1", "--by", "K")]
    [InlineData("is not done", "undone", Job, "3", "--by", "K")]
    [InlineData("has not stopped", "resume", Job, "--by", "K")]
    [InlineData("is no time", "note", Job, "x", "--at", "noonish", "--by", "K")]
    [InlineData("is no picture", "photo", Job, "tank.proc", "--by", "K")]
    [InlineData("could be a slip", "undone", Job, "--event", "1", "--by", "K")]
    public async Task What_cannot_be_is_refused_with_the_reason(string why, params string[] arguments)
    {
        await OpenAsync();
        var before = _disk.Read($"{Job}/journal.jsonl");
        var run = await RunAsync(arguments);

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Contains(why, run.Error, StringComparison.Ordinal);
        Assert.Equal(before, _disk.Read($"{Job}/journal.jsonl"));
    }

    [Fact]
    public async Task Where_no_job_can_be_kept_it_is_said()
    {
        var run = await RunAsync("open", "pump_out", "--in", "tank.proc", "--jobs", "tank.proc", "--by", "Kern");

        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Contains("tank.proc", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_list_names_every_job_and_how_far_it_is()
    {
        await OpenAsync();
        await OpenAsync();
        await GoodAsync("done", Job, "1", "--by", "Kern");
        var run = await RunAsync("list", "jobs");

        Assert.Equal(2, run.Output.Count(letter => letter == '\n'));
        Assert.Contains("open, Take the pump out, water tank, 1 of ", run.Output, StringComparison.Ordinal);
    }

    private async Task OpenAsync() => await GoodAsync("open", "pump_out", "--in", "tank.proc", "--machine-serial", "P9", "--order", "77", "--by", "Kern");

    private JsonElement Plan() => JsonDocument.Parse(_disk.Read($"{Job}/pack/plan.json")).RootElement;

    private int Step(string phase, string item) => Plan().GetProperty(phase).EnumerateArray().SelectMany(card => card.GetProperty("steps").EnumerateArray())
        .First(step => step.GetProperty("item").GetString() == item).GetProperty("number").GetInt32();

    private async Task<CliRun> GoodAsync(params string[] arguments)
    {
        var run = await RunAsync(arguments);
        Assert.Equal((ExitCode.Clean, ""), (run.Code, run.Error));
        return run;
    }

    private async Task<CliRun> RunAsync(params string[] arguments) => (await CliRun.AtAsync(_disk.Path, ["job", .. arguments])).AssertNoBug();
}
