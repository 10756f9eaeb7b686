using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Tests.Plans;

namespace ProcScript.Analysis.Tests.Tools;

/// <summary>No spanner sits on a torque wrench.</summary>
public class CrowfootTests
{
    private const string Wrench = "tool wrench \"torque wrench, 5 to 50 N·m\" { range 5 .. 50 N.m }\n";

    [Theory]
    [InlineData("19 mm open spanner", "")]
    [InlineData("19 mm ring spanner", "")]
    [InlineData("19 mm open-end wrench", "")]
    [InlineData("flare nut wrench", "19 mm crowfoot", "crowfoot, 19 mm")]
    public void A_crowfoot_of_its_size_takes_the_place_of_a_spanner(string spanner, string catalog, string? crowfoot = null)
    {
        var plan = Of($"tool spanner \"{spanner}\" {{ size 19 mm }}" + (catalog.Length > 0 ? "\ntool foot \"crowfoot\" { size 19 mm }" : ""), "tool spanner  torque 22 N.m");

        var tight = plan.Step("Fasten 4 × nut");
        Assert.Equal([crowfoot ?? "19 mm crowfoot", "torque wrench, 5 to 50 N·m"], tight.Tools);
        Assert.Equal(crowfoot ?? "19 mm crowfoot", tight.Crowfoot);
        Assert.Contains(plan.Tools, tool => tool is { IsCrowfoot: true } && tool.Title == tight.Crowfoot);
        var off = plan.Step("Undo 4 × nut");
        Assert.Equal("", off.Crowfoot);
        Assert.StartsWith(spanner, Assert.Single(off.Tools), StringComparison.Ordinal);
    }

    [Fact]
    public void The_first_spanner_turns_and_the_others_hold() => Assert.Equal(
        ["19 mm crowfoot", "24 mm open spanner", "torque wrench, 5 to 50 N·m"],
        Of("tool a \"19 mm open spanner\" { size 19 mm }\ntool b \"24 mm open spanner\" { size 24 mm }", "tool a, b  torque 22 N.m").Step("Fasten 4 × nut").Tools);

    [Theory]
    [InlineData("19 mm socket", "drive other  tool spanner  torque 22 N.m")]
    [InlineData("19 mm spanner bit", "drive other  tool spanner  torque 22 N.m")]
    [InlineData("hook", "tool other, spanner")]
    public void None_is_needed_where_something_sits_on_the_wrench_or_there_is_no_torque(string other, string tools)
    {
        var tight = Of($"tool spanner \"19 mm open spanner\" {{ size 19 mm }}\ntool other \"{other}\"", tools).Step("Fasten 4 × nut");

        Assert.Equal("", tight.Crowfoot);
        Assert.Contains("19 mm open spanner", tight.Tools);
    }

    [Fact]
    public void What_goes_in_finger_tight_takes_the_spanner_and_its_torque_the_crowfoot()
    {
        var plan = PlanOf.Text(Wrench + """
            tool spanner "19 mm open spanner" { size 19 mm }
            fastener nut "nut" { tool spanner  torque 22 N.m }
            machine rig "Rig" { part lid "lid" { held by 4 nut as lid_nuts } }
            procedure p "P" on rig { stage "S" { undo lid_nuts  remove lid }  refit { snug lid_nuts } }
            """);

        Assert.Equal(["19 mm crowfoot", "torque wrench, 5 to 50 N·m"], Assert.Single(plan.AllSteps(), step => step.Verb == "tighten").Tools);
        Assert.Equal(["19 mm open spanner"], Assert.Single(plan.AllSteps(), step => step.Verb == "snug").Tools);
    }

    private static Plan Of(string catalog, string nut) => PlanOf.Text(Wrench + catalog + $$"""

        fastener nut "nut" { {{nut}} }
        machine rig "Rig" { part lid "lid" { held by 4 nut as lid_nuts } }
        procedure p "P" on rig { stage "S" { undo lid_nuts } }
        """);
}
