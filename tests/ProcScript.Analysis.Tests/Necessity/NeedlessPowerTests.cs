namespace ProcScript.Analysis.Tests.Necessity;

/// <summary>What a test under power, or what may be open when an energy comes back, leans on is no superfluous step.</summary>
public sealed class NeedlessPowerTests
{
    private const string Handle = "undo handle_bolts  remove handle";
    private const string Guard = "undo guard_bolts  remove guard";

    [Theory]
    [InlineData("refit { test \"Runs\" before fit handle { power mains  check \"It turns.\" } }")]
    [InlineData("refit { test \"Runs\" after fit handle { power mains  check \"It turns.\" } }")]
    public void A_part_that_a_test_names_comes_off_for_it(string refit)
    {
        Assert.Equal([], Told($"isolate mains  {Handle}  {Guard}", refit));
        Assert.Equal(["undo handle_bolts", "remove handle"], Told($"isolate mains  {Handle}  {Guard}", "refit { test \"Runs\" { power mains  check \"It turns.\" } }"));
    }

    [Theory]
    [InlineData("refit { test \"Runs\" { power mains  check \"It turns.\" } }")]
    [InlineData("refit { restore mains while handle open because \"It is watched.\" }")]
    public void An_energy_is_isolated_for_what_is_done_when_it_comes_back(string refit) =>
        Assert.Equal([], Told($"isolate mains  {Guard}", refit));

    [Fact]
    public void A_test_of_a_called_procedure_is_judged_there()
    {
        const string Called = "procedure guard_off \"Guard\" on fan { stage \"Guard\" { isolate mains  undo guard_bolts  remove guard }  refit { test \"Runs\" before fit guard { power mains  check \"It turns.\" } } }";

        Assert.Equal(["undo handle_bolts", "remove handle"], Told($"do guard_off  {Handle}", "", Called));
    }

    /// <summary>The steps that are told not to be needed.</summary>
    private static IEnumerable<string> Told(string steps, string refit, string called = "")
    {
        var source = Checked.Text($$"""
            tool key "key"
            fastener bolt "bolt" { drive key }
            connector plug_2 "plug"
            machine fan "Fan" {
              energy mains "mains" { isolate "Off."  verify "Dark."  restore "On." }
              part handle "handle" { held by 2 bolt as handle_bolts }
              part guard "guard" { held by 4 bolt as guard_bolts }
              part motor "motor" { wired by 1 plug_2 as motor_plug on mains }
            }
            {{called}}
            procedure p "P" on fan {
              goal remove guard
              stage "S" { {{steps}} }
              {{refit}}
            }
            """);
        Assert.All(source.Report.Procedures, procedure => Assert.True(procedure.IsProven, string.Join('\n', source.Findings)));
        return Needless.In(source.Report).SelectMany(finding => Needless.Steps(source, finding)).ToList();
    }
}
