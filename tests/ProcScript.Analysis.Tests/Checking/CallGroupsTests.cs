using ProcScript.Analysis.Checking;
using ProcScript.Model;
using ProcScript.Model.Sources;

namespace ProcScript.Analysis.Tests.Checking;

/// <summary>Which procedures are judged together, and that nothing else changes when their runs are let go after.</summary>
public sealed class CallGroupsTests
{
    private static readonly MemorySourceStore Store = new(new Dictionary<string, string>
    {
        ["machine.proc"] = """
            clip pin "push pin"
            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
              part shelf "shelf" { held by 2 pin as shelf_pins }
            }
            """,
        ["a.proc"] = """
            use "machine.proc"
            procedure guard_off "Take the guard off" on press { goal remove guard  stage "Guard" { release guard_pins  remove guard } }
            """,
        ["b.proc"] = """
            use "machine.proc"
            procedure shelf_off "Take the shelf off" on press { goal remove shelf  stage "Shelf" { release guard_pins  release shelf_pins  remove shelf } }
            """,
        ["c.proc"] = """
            use "a.proc"
            use "machine.proc"
            procedure both_off "Take both off" on press { goal remove shelf  stage "Both" { do guard_off  release shelf_pins  remove shelf } }
            """,
    });

    [Fact]
    public void A_caller_is_in_the_group_of_what_it_calls_in_another_file()
    {
        var library = LibraryBinder.Bind(Store, TestContext.Current.CancellationToken);

        Assert.Empty(library.Findings);
        Assert.Equal(
            ["guard_off both_off", "shelf_off"],
            CallGroups.Of(library.Procedures).Select(group => string.Join(' ', group.Select(place => library.Procedures[place].Name))));
    }

    [Fact]
    public void The_findings_are_the_same_without_the_runs()
    {
        var kept = LibraryCheck.Run(Store, TestContext.Current.CancellationToken);
        var judged = LibraryCheck.Judge(Store, CheckSettings.Usual, TestContext.Current.CancellationToken);

        Assert.NotEmpty(kept.Findings);
        Assert.Equal(Words(kept), Words(judged));
        Assert.All(kept.Procedures, procedure => Assert.NotNull(procedure.CreatePlan()));
        Assert.All(judged.Procedures, procedure => Assert.Null(procedure.CreatePlan()));
        Assert.All(judged.Procedures, procedure => Assert.True(procedure.IsProven));
    }

    private static IEnumerable<string> Words(LibraryReport report) =>
        report.Findings.Select(reported => $"{reported.Finding.Primary} {reported.Finding.Rule.Code} {reported.Finding.Message} {reported.Fingerprint}");
}
