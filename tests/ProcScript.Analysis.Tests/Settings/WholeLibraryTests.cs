using ProcScript.Analysis.Checking;
using ProcScript.Analysis.Reports;
using ProcScript.Model;
using ProcScript.Model.Sources;

namespace ProcScript.Analysis.Tests.Settings;

/// <summary>The rules about a whole library: when they speak, and that memory and scope do not change what they say.</summary>
public sealed class WholeLibraryTests
{
    private const string Pins = "clip pin \"push pin\"\nclip cap \"snap-on cap\"\n";

    private const string Machine = """
        use "pins.proc"
        machine press "Press" {
          part guard "guard" { held by 4 pin as guard_pins }
          part shelf "shelf" { held by 2 pin as shelf_pins }
        }
        """;

    private const string Job = """
        use "machine.proc"
        procedure guard_off "Take the guard off" on press { goal remove guard  stage "Guard" { release guard_pins  remove guard } }
        """;

    [Fact]
    public void They_speak_only_of_a_library_with_settings()
    {
        Assert.Empty(Files(settings: false).Codes);
        Assert.Equal(["PRC6005", "PRC6001"], Files(settings: true).Codes);
    }

    [Fact]
    public void They_are_quiet_about_a_part_of_a_library()
    {
        var store = Store(Job);
        var library = LibraryBinder.Bind(store, TestContext.Current.CancellationToken);
        var scope = CheckScope.TouchedBy(library, ["pins.proc"]);

        Assert.Empty(LibraryCheck.Judge(library, ProcScript.Analysis.Settings.SettingsReader.Read(store), scope, TestContext.Current.CancellationToken).Findings);
    }

    [Fact]
    public void What_is_remembered_gives_the_same_as_a_fresh_check()
    {
        CheckMemory memory = new();
        string[] jobs =
        [
            Job,
            Job.Replace("\"Guard\" {", "\"Guard\" { release shelf_pins  remove shelf ", StringComparison.Ordinal),
            Job + "\nprocedure shelf_off \"Take the shelf off\" on press { stage \"Shelf\" { strip shelf } }",
            Job,
        ];
        foreach (var job in jobs)
        {
            var store = Store(job);
            var library = LibraryBinder.Bind(store, TestContext.Current.CancellationToken);
            var settings = ProcScript.Analysis.Settings.SettingsReader.Read(store);
            var again = LibraryCheck.Run(library, settings, memory, TestContext.Current.CancellationToken);
            var fresh = LibraryCheck.Run(store, TestContext.Current.CancellationToken);

            Assert.Equal(Lines(fresh), Lines(again));
        }
    }

    [Fact]
    public void A_comment_on_them_waits_for_a_check_of_the_whole()
    {
        var allowing = Machine.Replace("machine press", "// proc: allow PRC6005 because \"The shelf is never taken off.\"\nmachine press", StringComparison.Ordinal);
        (string, string)[] files = [("pins.proc", Pins), ("machine.proc", allowing), ("job.proc", Job)];

        var part = Checked.Files(files);
        var whole = Checked.Files([.. files, ("procscript.json", "{}")]);

        Assert.Empty(part.Codes);
        Assert.Equal(["PRC6001"], whole.Codes);
        Assert.Equal(SuppressionState.NotAsked, Assert.Single(part.Report.Suppressions).State);
        Assert.Equal(SuppressionState.Used, Assert.Single(whole.Report.Suppressions).State);
    }

    private static IEnumerable<string> Lines(LibraryReport report) =>
        report.Findings.Select(found => $"{found.Finding.Rule.Code} {found.Finding.Primary} {found.Finding.Message}");

    private static MemorySourceStore Store(string job) => new(new Dictionary<string, string>
    {
        ["pins.proc"] = Pins,
        ["machine.proc"] = Machine,
        ["job.proc"] = job,
        ["procscript.json"] = "{}",
    });

    private static Checked Files(bool settings) => settings
        ? Checked.Files(("pins.proc", Pins), ("machine.proc", Machine), ("job.proc", Job), ("procscript.json", "{}"))
        : Checked.Files(("pins.proc", Pins), ("machine.proc", Machine), ("job.proc", Job));
}
