using CsCheck;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Tests.Properties;
using ProcScript.Analysis.Tools;

namespace ProcScript.Analysis.Tests.Tools;

public class StageOrderTests
{
    /// <summary>Random machines whose kinds take four tools, stripped in a random order: the order written into the text is proven and saves changes.</summary>
    [Fact]
    public void The_order_that_is_suggested_is_proven_and_changes_tools_less_often()
    {
        var suggested = 0;
        Sample.Seeds(parts: 6).Sample(
            seed =>
            {
                var sample = Sample.Of(seed, steps: 14);
                var text = WithTools(sample.Text);
                var report = Checked.Unasked(text);
                if (report.Report.Findings.FirstOrDefault(found => found.Finding.Rule.Code == "PRC5071") is not { } found)
                {
                    return;
                }

                var strip = report.Only.Outcome.Strip!;
                var stage = Assert.Single(strip.Stages);
                var order = StageOrder.Find(strip, stage, [.. stage.Actions.Select(ToolList.Of)], null)!.Value;
                var lines = order.Select(step => sample.Steps[stage.Stage.Steps.IndexOf(step)]);
                var other = Checked.Unasked(WithTools(sample.With(steps: [.. lines]).Text));

                Assert.True(other.Only.IsProven, text);
                Assert.True(Changes(other.Only.Outcome.Strip!) < Changes(strip), text);
                Interlocked.Increment(ref suggested);
            },
            iter: Depth.Of(2000));
        Assert.True(suggested > Depth.Least(20), $"only {suggested} orders were suggested");
    }

    [Theory]
    [InlineData("undo a_bolts  isolate mains  release b_pins  task \"Look.\"  undo c_bolts")]
    [InlineData("undo a_bolts  task \"Look.\"  release b_pins  task \"Look.\"  undo c_bolts")]
    [InlineData("undo a_bolts  support b  release b_pins  support c  undo c_bolts")]
    [InlineData("undo a_bolts  release b_pins  discard b_pins because \"Old.\"  undo c_bolts")]
    [InlineData("strip a  strip b  strip c")]
    public void What_has_its_place_for_reasons_of_its_own_stays_there(string steps) =>
        Assert.DoesNotContain("PRC5071", Rig(steps).Codes);

    [Fact]
    public void A_part_stays_with_the_step_that_frees_it()
    {
        var found = Assert.Single(Rig("undo a_bolts  remove a  release b_pins  remove b  undo c_bolts  remove c  release e_pins").Report.Findings).Finding;

        Assert.Equal("the stage \"S\" takes 3 tool changes, and 1 in another order", found.Message);
        Assert.Equal(
            "in this order it takes 1: `undo c_bolts`, `remove c`, `release b_pins`, `remove b`",
            found.Help);
    }

    private static Checked Rig(string steps) => Checked.Text($$"""
        tool socket "socket"
        tool lever "lever"
        fastener bolt "bolt" { drive socket }
        clip pin "pin" { tool lever }
        machine m "M" {
          energy mains "mains" { isolate "Off."  restore "On." }
          part a "a" { held by 2 bolt as a_bolts }
          part b "b" { held by 2 pin as b_pins }
          part c "c" { held by 2 bolt as c_bolts }
          part d "d" { held by 2 pin as d_pins { behind b }  held by 2 bolt as d_bolts { needs d_pins off } }
          part e "e" { held by 2 pin as e_pins }
        }
        procedure p "P" on m { stage "S" { {{steps}} } }
        """);

    private static string WithTools(string text) => text
        .Replace("clip pin \"pin\"", "tool lever \"lever\"\nclip pin \"pin\" { tool lever }", StringComparison.Ordinal)
        .Replace("line hose \"hose\" { cap 2 stopper }", "tool spanner \"spanner\"\nline hose \"hose\" { tool spanner }", StringComparison.Ordinal)
        // A stage into which the compiler puts caps is left in its order.
        .Replace("cap 1 stopper", "", StringComparison.Ordinal)
        .Replace("bond glue \"glue\"", "tool knife \"knife\"\nbond glue \"glue\" { tool knife }", StringComparison.Ordinal);

    private static int Changes(StripRun strip) => ToolChanges.Of(strip.Actions.Select(ToolList.Of));
}
