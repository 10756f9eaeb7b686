namespace ProcScript.Analysis.Tests.Editing;

/// <summary>What an edit of the catalog or of a machine has proved again: whoever reads what changed, and nobody else.</summary>
public sealed class CatalogEditTests
{
    private const string Tools =
        """
        tool key_5 "5 mm hex key" { size 5 mm }
        tool open_10 "10 mm open spanner" { size 10 mm }
        tool torque_25 "torque wrench" { range 5 .. 25 N.m }
        """;

    private const string Kinds =
        """
        use "tools.proc"
        fastener m6 "M6 bolt" { thread M6x1  length 20 mm  grade 8.8  drive key_5  torque 9 N.m }
        fastener m8 "M8 bolt" {
          thread M8x1.25
          length 25 mm
          grade 8.8
          drive open_10
          torque 22 N.m
        }
        """;

    private const string Settings = "procscript.json";

    private static readonly string[] Machines = ["fan", "pump"];

    [Theory]
    [InlineData("  length 25 mm", "  // measured at the head\n  length 25 mm")]
    [InlineData("  length 25 mm", "  length  25 mm")]
    [InlineData("use \"tools.proc\"", "// The shop's bolts.\nuse \"tools.proc\"")]
    public void What_says_the_same_proves_nothing_again(string old, string now) => Assert.Empty(ProvenAgain("kinds.proc", old, now));

    [Theory]
    [InlineData("torque 22 N.m", "torque 23 N.m")]
    [InlineData("\"M8 bolt\"", "\"M8 flange bolt\"")]
    public void A_kind_has_those_proved_again_that_use_it(string old, string now) => Assert.Equal(["pump_off"], ProvenAgain("kinds.proc", old, now));

    [Fact]
    public void A_machine_has_its_own_procedures_proved_again() => Assert.Equal(["fan_off"], ProvenAgain("fan.proc", "part cover \"", "part cover \"upper "));

    [Fact]
    public void A_wrench_has_all_proved_again_that_can_see_it() => Assert.Equal(["fan_off", "pump_off"], ProvenAgain("tools.proc", "range 5 ..", "range 6 .."));

    [Fact]
    public void A_tool_that_nobody_needs_proves_nothing_again() =>
        Assert.Empty(ProvenAgain("tools.proc", "5 .. 25 N.m }", "5 .. 25 N.m }\ntool mirror \"inspection mirror\""));

    [Fact]
    public void A_crowfoot_that_comes_and_goes_is_seen_though_nobody_names_it()
    {
        var library = Library();
        const string Crowfoot = "\ntool crow_10 \"10 mm crowfoot\" { size 10 mm }";
        Assert.Contains(library.Check().Findings, one => one.Finding.Rule.Name == "crowfoot-missing");

        library.Files["tools.proc"] = Tools + Crowfoot;
        Assert.DoesNotContain(Same(library).Findings, one => one.Finding.Rule.Name == "crowfoot-missing");

        library.Files["tools.proc"] = Tools + Crowfoot.Replace("crowfoot", "mirror", StringComparison.Ordinal);
        Assert.Contains(Same(library).Findings, one => one.Finding.Rule.Name == "crowfoot-missing");
    }

    [Fact]
    public void Other_settings_are_heeded_though_no_text_changed()
    {
        var library = Library();
        Assert.Contains(library.Check().Findings, one => one.Finding.Rule.Name == "crowfoot-missing");

        library.Files[Settings] = """{ "severities": { "crowfoot-missing": "off" } }""";

        Assert.DoesNotContain(Same(library).Findings, one => one.Finding.Rule.Name == "crowfoot-missing");
    }

    [Fact]
    public void A_goal_that_is_taken_out_is_missed_and_a_call_takes_its_place()
    {
        var library = Library();
        library.Check();
        library.Files["fan-off.proc"] = Job("fan").Replace("goal remove cover", "", StringComparison.Ordinal);
        Assert.Contains(Same(library).Findings, one => one.Finding.Rule.Name == "no-goal");

        library.Files["fan-off.proc"] += "\nprocedure all_off \"Take all off\" on fan { goal remove cover  do fan_off }\n";
        Assert.DoesNotContain(Same(library).Findings, one => one.Finding.Rule.Name == "no-goal");
    }

    /// <summary>Makes an edit and tells which procedures were proved again.</summary>
    private static IEnumerable<string> ProvenAgain(string path, string old, string now)
    {
        var library = Library();
        var before = library.Check();
        Assert.All(before.Procedures, one => Assert.True(one.IsProven));
        Assert.Contains(old, library.Files[path], StringComparison.Ordinal);
        library.Files[path] = library.Files[path].Replace(old, now, StringComparison.Ordinal);
        var after = Same(library);
        return before.Procedures.Zip(after.Procedures).Where(pair => !ReferenceEquals(pair.First.Outcome, pair.Second.Outcome)).Select(pair => pair.Second.Procedure.Name);
    }

    /// <summary>The report, which is that of a fresh check.</summary>
    private static LibraryReport Same(EditedLibrary library)
    {
        var report = library.Check();
        Assert.Equal(EditedLibrary.Describe(library.CheckFresh()), EditedLibrary.Describe(report));
        return report;
    }

    private static EditedLibrary Library() => new(
        [
            KeyValuePair.Create("tools.proc", Tools),
            KeyValuePair.Create("kinds.proc", Kinds),
            .. Machines.SelectMany(machine => new[]
            {
                KeyValuePair.Create($"{machine}.proc", $$"""
                    use "kinds.proc"
                    machine {{machine}} "{{machine}}" {
                      part cover "cover" { held by 4 {{(machine == "fan" ? "m6" : "m8")}} as bolts }
                    }
                    """),
                KeyValuePair.Create($"{machine}-off.proc", Job(machine)),
            }),
        ],
        isWhole: true);

    private static string Job(string machine) =>
        $$"""
        use "{{machine}}.proc"
        procedure {{machine}}_off "Take the cover off" on {{machine}} {
          goal remove cover
          stage "Cover" {
            undo bolts
            remove cover
          }
        }
        """;
}
