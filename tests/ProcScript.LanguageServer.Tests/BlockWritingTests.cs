using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using ProcScript.LanguageServer.Tests.Clients;
using ProcScript.LanguageServer.Tests.Samples;

namespace ProcScript.LanguageServer.Tests;

/// <summary>What can be written within blocks, brackets and conditions; on a machine with an option.</summary>
public sealed partial class BlockWritingTests : IAsyncLifetime
{
    private const string Turning =
        """
          option lamp "lamp"
          fluid oil "gear oil" { charge 1 ± 0.1 L  empty "Open the drain."  fill "Fill to the plug." }
          when lamp { part shade "lamp shade" { held by 2 m8x25 as shade_bolts } }
          each side in left, right { part foot[side] "{side} foot" { held by 1 m8x25 as foot_bolt[side] } }
          control speed
        """;

    private static readonly string[] Openable =
    [
        "foot[left]", "foot[right]", "foot_bolt[left]", "foot_bolt[right]", "guard", "guard_bolts", "guard_caps", "wheel", "hub_bolt", "motor", "motor_bolts", "motor_plug",
    ];

    private readonly TemporaryLibrary _library = Sample.Library();
    private EditorClient _client = null!;
    private EditorDocument _job = null!;
    private EditorDocument _machine = null!;

    public async ValueTask InitializeAsync()
    {
        var snippets = new JsonObject { ["completion"] = new JsonObject { ["completionItem"] = new JsonObject { ["snippetSupport"] = true } } };
        _client = await EditorClient.StartAsync(_library.Path, new JsonObject { ["textDocument"] = snippets });
        _job = EditorDocument.Open(_client, EditorClient.UriOf(_library["fan/motor.proc"]), Sample.Job);
        _machine = EditorDocument.Open(
            _client, EditorClient.UriOf(_library["fan/machine.proc"]), Sample.Machine.Replace("  control speed", Turning.TrimEnd(), StringComparison.Ordinal));
    }

    public async ValueTask DisposeAsync()
    {
        await _client.DisposeAsync();
        _library.Dispose();
    }

    [Theory]
    [InlineData("when |", new[] { "lamp", "not" })]
    [InlineData("when not |", new[] { "lamp" })]
    [InlineData("each side in left, right { when | }", new[] { "lamp", "side", "not" })]
    [InlineData("each side in left, right { when side is | }", new[] { "left", "right", "not" })]
    [InlineData("undo foot_bolt[|]", new[] { "left", "right" })]
    [InlineData("each end in left, right { undo foot_bolt[|] }", new[] { "end", "left", "right" })]
    [InlineData("when lamp { undo | }", new[] { "shade_bolts", "foot_bolt[left]", "foot_bolt[right]" })]
    [InlineData("undo |", new[] { "foot_bolt[left]", "foot_bolt[right]" })]
    [InlineData("isolate mains isolate |", new[] { "mains" })]
    [InlineData("set speed |", new[] { "to" })]
    [InlineData("undo rest |", new[] { "of" })]
    [InlineData("verify |", new[] { "mains" })]
    [InlineData("inspect motor { needs mains | }", new[] { "isolated", "live" })]
    [InlineData("inspect motor { needs speed at | }", new[] { "low", "high" })]
    [InlineData("inspect motor { needs oil | }", new[] { "empty", "full" })]
    [InlineData("inspect motor { needs foot_bolt[| }", new[] { "left", "right" })]
    [InlineData("inspect motor { needs foot_bolt[left] | }", new[] { "off", "slack", "fitted" })]
    [InlineData("each end in left, right { inspect motor { needs speed at low, foot_bolt[end] | } }", new[] { "off", "slack", "fitted" })]
    [InlineData("inspect motor { tool | }", new[] { "socket_13", "lever" })]
    [InlineData("inspect motor { grip | }", new[] { "good", "fair", "poor" })]
    public async Task In_a_stage_comes_what_fits_there(string typed, string[] expected) =>
        Assert.Equal(expected, (await TypeAsync(_job, "    isolate mains\n", typed, "    ")).Take(expected.Length));

    [Fact]
    public async Task Of_two_indices_each_is_written_by_its_own_variable()
    {
        _machine.Replace(
            "  control speed",
            "  each end in front, rear { each side in left, right { part cap[end, side] \"cap\" { held by 1 m8x25 as cap_bolt[end, side] } } }\n  control speed");

        var one = await TypeAsync(_job, "    isolate mains\n", "each side in left, right { undo | }", "    ");
        var both = await TypeAsync(_job, "    isolate mains\n", "each end in front, rear { each side in left, right { undo | } }", "    ");

        Assert.Contains("cap_bolt[front, side]", one);
        Assert.Contains("cap_bolt[front, left]", one);
        Assert.DoesNotContain("cap_bolt[end, side]", one);
        Assert.Contains("cap_bolt[end, side]", both);
    }

    [Fact]
    public async Task Beside_a_name_stands_its_title_where_that_says_more_and_what_it_is_like()
    {
        var (part, joint) = (await ItemsAsync(_job, "    isolate mains\n", "inspect |", "    "), await ItemsAsync(_job, "    isolate mains\n", "release |", "    "));

        Assert.Contains("guard: front guard, in place", part.Select(Told));
        Assert.Equal("guard_caps: 4 of 4 attached", Told(joint[0]));
    }

    private static string Told(JsonNode? item) => $"{item!["label"]}: {item["detail"]}";

    [Theory]
    [InlineData("refit { check \"x\" | }", new[] { "before", "after", "expect" })]
    [InlineData("refit { fit motor | }", new[] { "before", "after" })]
    [InlineData("refit { fit motor before restore | }", new[] { "mains" })]
    [InlineData("refit { check \"x\" needs speed at low before restore | }", new[] { "mains" })]
    [InlineData("refit { restore mains | }", new[] { "before", "after", "while" })]
    [InlineData("refit { restore mains while motor | }", new[] { "open because" })]
    [InlineData("refit { restore mains while motor open | }", new[] { "because" })]
    [InlineData("refit { test \"x\" | }", new[] { "before", "after" })]
    [InlineData("refit { test \"x\" after restore | }", new[] { "mains" })]
    [InlineData("refit { test \"x\" after fit motor { | } }", new[] { "power", "measure", "task", "check", "record", "while", "danger", "warning", "caution", "notice" })]
    [InlineData("refit { test \"x\" { power | } }", new[] { "mains" })]
    [InlineData("refit { test \"x\" { power mains while motor_plug | } }", new[] { "open because" })]
    [InlineData("refit needs mains |", new[] { "isolated", "live" })]
    [InlineData("when |", new[] { "lamp", "not" })]
    public async Task In_a_procedure_comes_what_fits_there(string typed, string[] expected) =>
        Assert.Equal(expected, (await TypeAsync(_job, "  goal replace motor\n", typed, "  ")).Take(expected.Length));

    [Theory]
    [InlineData("refit { restore mains while | }")]
    [InlineData("refit { restore mains while motor, | }")]
    [InlineData("refit { test \"x\" { power mains while | } }")]
    public async Task Joints_and_parts_may_stay_open(string typed) =>
        Assert.Equal(Openable.ToHashSet(), (await TypeAsync(_job, "  goal replace motor\n", typed, "  ")).Take(Openable.Length).ToHashSet());

    [Fact]
    public async Task An_energy_that_is_not_proved_to_be_off_says_so_and_where_that_is_done()
    {
        _machine.Replace(
            "    verify  \"Press the switch: the fan stays still.\"\n",
            "    voltage 230 V ac\n    verify \"Measure.\" at motor_plug expect <= 5 V { behind guard }\n");
        var told = await HoverAsync("isolate mai");
        _job.Replace("    remove wheel\n", "    remove wheel\n    verify mains\n");

        Assert.Contains("Voltage: 230 V ac\n\nIsolate: Pull the plug.\n\nVerify: Measure. (≤ 5 V)\n\nVerify at: ", told, StringComparison.Ordinal);
        Assert.DoesNotContain("Not yet within reach", told, StringComparison.Ordinal);
        Assert.Contains("Before this step: isolated, not proved to be off", await HoverAsync("verify mai"), StringComparison.Ordinal);
        Assert.Contains("mains: 24 V supply, isolated, not proved to be off", (await ItemsAsync(_job, "    remove wheel\n", "verify |", "    ")).Select(Told));
    }

    [Theory]
    [InlineData("do turn(|)", new[] { "left", "right" })]
    [InlineData("do turn(left, |)", new[] { "1", "2" })]
    public async Task In_a_call_come_the_values_of_the_parameter(string typed, string[] expected)
    {
        _job.Set(_job.Text + "procedure turn(side in left, right, n in 1 .. 2) \"Turn\" on fan { goal inspect motor }\n");

        Assert.Equal(expected, (await TypeAsync(_job, "  goal replace motor\n", typed, "  ")).Take(expected.Length));
    }

    [Theory]
    [InlineData("energy mains \"24 V supply\" {\n", "hazard |", "restraint")]
    [InlineData("energy mains \"24 V supply\" {\n", "voltage 400 V |", "ac")]
    [InlineData("energy mains \"24 V supply\" {\n", "verify \"x\" |", "at")]
    [InlineData("energy mains \"24 V supply\" {\n", "verify \"x\" at |", "guard_bolts")]
    [InlineData("energy mains \"24 V supply\" {\n", "verify \"x\" at speed |", "expect")]
    [InlineData("energy mains \"24 V supply\" {\n", "verify \"x\" { behind | }", "guard")]
    [InlineData("energy mains \"24 V supply\" {\n", "verify \"x\" { tool | }", "socket_13")]
    [InlineData("part motor \"motor\" {\n", "held by 1 m8x25 as b { covered by 1 | }", "snap_cap")]
    [InlineData("part motor \"motor\" {\n", "renew with |", "guard_bolts")]
    [InlineData("part motor \"motor\" {\n", "when |", "lamp")]
    public async Task In_a_machine_comes_what_fits_there(string block, string typed, string expected) =>
        Assert.Contains(expected, await TypeAsync(_machine, block, typed, "    "));

    [Theory]
    [InlineData("motor", "inspect motor { | }", "how")]
    [InlineData("motor", "inspect motor { refit { | } }", "torque")]
    [InlineData("motor", "measure \"x\" { | }", "photo")]
    [InlineData("machine", "energy e { | }", "voltage")]
    [InlineData("machine", "energy e { verify \"x\" { | } }", "behind")]
    [InlineData("machine", "fluid f { | }", "charge")]
    [InlineData("refit", "test \"x\" { | }", "power")]
    [InlineData("refit", "test \"x\" { power mains  measure \"y\" { | } }", "photo")]
    [InlineData("machine", "control c { a, b\n | }", "time")]
    [InlineData("machine", "part p { | }", "mass")]
    [InlineData("machine", "part p { held by 1 m8x25 as b { | } }", "at")]
    [InlineData("machine", "part p { held by 1 m8x25 as b { covered by 1 snap_cap as c { | } } }", "release")]
    [InlineData("catalog", "tool t { | }", "size")]
    [InlineData("catalog", "supply s { | }", "single use")]
    [InlineData("catalog", "fastener f { | }", "drive")]
    [InlineData("catalog", "bond b { | }", "cure")]
    public async Task Every_property_that_a_block_offers_is_taken_there(string where, string typed, string among)
    {
        var (document, before) = where switch
        {
            "machine" => (_machine, "machine fan \"Tollard fan\" {\n"),
            "refit" => (_job, "  refit { "),
            "catalog" => (EditorDocument.Open(_client, EditorClient.UriOf(_library["catalog.proc"]), Sample.Catalog), ""),
            _ => (_job, "    isolate mains\n"),
        };
        var at = document.Text.IndexOf(before, StringComparison.Ordinal) + before.Length;
        var clean = document.Text;
        var items = await ItemsAsync(document, before, typed, "");
        Assert.Contains(among, items.Select(item => item!["label"]!.GetValue<string>()));
        Assert.DoesNotContain("undo", items.Select(item => item!["label"]!.GetValue<string>()));
        foreach (var written in items.Select(item => (item!["insertText"] ?? item["label"])!.GetValue<string>()).Where(written => !written.EndsWith(' ')))
        {
            document.Set(clean.Insert(at, typed.Replace("|", Hole().Replace(written, "$1$2").Replace("$0", "", StringComparison.Ordinal), StringComparison.Ordinal) + "\n"));
            var codes = (await document.DiagnosticsAsync()).Select(one => one!["code"]!.GetValue<string>()).ToList();
            Assert.DoesNotContain(codes, code => code is "PRC1111" || code.StartsWith("PRC10", StringComparison.Ordinal) || code.StartsWith("PRC12", StringComparison.Ordinal));
        }
    }

    [Theory]
    [InlineData("part motor \"motor\" {\n", "held", "held by ${1:4} ${2|m8x25,snap_cap|} as ${3:motor_bolts_2}")]
    [InlineData("part motor \"motor\" {\n", "wired", "wired by ${1:1} ${2:two_way} as ${3:motor_connector} on ${4|mains,none|}")]
    [InlineData("part motor \"motor\" {\n", "when", "when ${1:lamp} {\n  $0\n}")]
    [InlineData("machine fan \"Tollard fan\" {\n", "part", "part ${1:name} \"${2:title}\" {\n  $0\n}")]
    public async Task A_sentence_with_places_has_at_each_what_fits_there(string block, string word, string expected)
    {
        var items = await ItemsAsync(_machine, block, "|", "    ");

        Assert.Equal(expected, Assert.Single(items, item => item!["label"]!.GetValue<string>() == word)!["insertText"]!.GetValue<string>());
    }

    [Theory]
    [InlineData("measure", "measure \"${1:what}\" with ${2:tool} expect ${3:<= 0.5 V}")]
    [InlineData("check", "check \"${1:what}\"")]
    public async Task A_step_with_places_has_at_each_what_fits_there(string word, string expected)
    {
        var items = await ItemsAsync(_job, "    isolate mains\n", "|", "    ");

        Assert.Equal(expected, Assert.Single(items, item => item!["label"]!.GetValue<string>() == word)!["insertText"]!.GetValue<string>());
    }

    [Theory]
    [InlineData("task \"hel|")]
    [InlineData("task \"held by 4 |\"")]
    [InlineData("undo guard_bolts { how \"Then |\" }")]
    [InlineData("// undo |")]
    public async Task Within_a_text_or_a_comment_no_sentence_is_offered(string typed)
    {
        var items = await ItemsAsync(_job, "    isolate mains\n", typed, "    ");

        Assert.All(items, item => Assert.StartsWith("proc: allow", item!["label"]!.GetValue<string>(), StringComparison.Ordinal));
        Assert.True(typed.StartsWith("//", StringComparison.Ordinal) || items.Count == 0);
    }

    [Theory]
    [InlineData("stage")]
    [InlineData("file")]
    public async Task Nothing_is_offered_twice(string where)
    {
        var items = where == "stage" ? await ItemsAsync(_job, "    isolate mains\n", "|", "    ") : await ItemsAsync(_job, "use \"machine.proc\"\n", "|", "");
        var labels = items.Select(item => item!["label"]!.GetValue<string>()).ToList();

        Assert.True(labels.Count > 5);
        Assert.Equal(labels.Distinct(StringComparer.Ordinal), labels);
    }

    [Fact]
    public async Task Hints_of_steps_that_only_some_machines_have_say_so()
    {
        _job.Replace("    isolate mains\n", "    isolate mains\n    set speed to high { how \"Turn it.\" }\n    when lamp { undo shade_bolts }\n");
        var hints = (await _client.RequestAsync("textDocument/inlayHint", new JsonObject { ["textDocument"] = _job.Identifier, ["range"] = _job.RangeOf(0, _job.Text.Length) }))!.AsArray();
        var told = hints.Select(hint => (At: _job.OffsetOf(hint!["position"]!), Label: hint["label"]!.GetValue<string>())).ToDictionary(hint => hint.At, hint => hint.Label);

        Assert.Matches(@"^refit \d+$", told[_job.Text.IndexOf(" { how", StringComparison.Ordinal)]);
        Assert.Matches(@"^refit \d+ with lamp$", told[_job.Text.IndexOf(" }", _job.Text.IndexOf("undo shade_bolts", StringComparison.Ordinal), StringComparison.Ordinal)]);
    }

    [Fact]
    public async Task Hover_knows_what_only_some_machines_have_and_the_values_of_variables()
    {
        _job.Replace("    isolate mains\n", "    isolate mains\n    when lamp { undo shade_bolts }\n    each side in left, right { inspect foot[side] }\n");

        Assert.Contains("Before this step: 2 of 2 attached", await HoverAsync("undo shade_b"), StringComparison.Ordinal);
        Assert.Equal("variable `side`: `left`, `right`", await HoverAsync("inspect foot[si"));
    }

    private async Task<string> HoverAsync(string mark) =>
        (await _client.RequestAsync("textDocument/hover", _job.At(mark)))!["contents"]!["value"]!.GetValue<string>();

    private async Task<string[]> TypeAsync(EditorDocument document, string before, string typed, string indent) =>
        [.. (await ItemsAsync(document, before, typed, indent)).Select(item => item!["label"]!.GetValue<string>())];

    /// <summary>Types a line behind a text of the document, asks at its bar, and takes it away again.</summary>
    private async Task<JsonArray> ItemsAsync(EditorDocument document, string before, string typed, string indent)
    {
        var at = document.Text.IndexOf(before, StringComparison.Ordinal) + before.Length;
        var line = $"{indent}{typed.Replace("|", "", StringComparison.Ordinal)}\n";
        document.Edit(at, 0, line);
        var parameters = new JsonObject { ["textDocument"] = document.Identifier, ["position"] = document.Position(at + indent.Length + typed.IndexOf('|', StringComparison.Ordinal)) };
        var items = (await _client.RequestAsync("textDocument/completion", parameters))!["items"]!.AsArray();
        document.Edit(at, line.Length, "");
        return items;
    }

    [GeneratedRegex(@"\$\{\d+(?::([^}]*)|\|((?:\\,|[^,|])*)[^}]*)\}")]
    private static partial Regex Hole();
}
