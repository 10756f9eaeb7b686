using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Tests.Plans;
using ProcScript.Model.Sources;

namespace ProcScript.Analysis.Tests.Tools;

public class ToolListTests
{
    private const string Catalog = """
        tool socket "socket"
        tool small "torque wrench, 5 to 25 N·m" { range 5 .. 25 N.m }
        tool large "torque wrench, 20 to 120 N·m" { range 20 .. 120 N.m }

        """;

    [Theory]
    [InlineData("22 N.m", "torque wrench, 5 to 25 N·m")]
    [InlineData("30 N.m", "torque wrench, 20 to 120 N·m")]
    [InlineData("20, 40 N.m + 90°", "torque wrench, 20 to 120 N·m", "angle gauge")]
    [InlineData("2 N.m", "torque wrench")]
    [InlineData("10, 40 N.m", "torque wrench")]
    public void The_smallest_wrench_that_covers_the_torque_is_named(string torque, params string[] tools) =>
        Assert.Equal(["socket", .. tools], PlanOf.Text(Catalog + Rig(torque)).Step("Fasten 4 × bolt").Tools);

    [Fact]
    public void A_torque_that_no_wrench_covers_stands_in_the_list_with_what_it_has_to_cover() =>
        Assert.Equal(["socket", "torque wrench, 2 N·m"], PlanOf.Text(Catalog + Rig("2 N.m")).Tools.Select(tool => tool.Title));

    [Fact]
    public void A_wrench_without_a_range_is_listed_by_its_title_where_nothing_is_tightened_with_it() =>
        Assert.Equal(
            ["torque wrench"],
            PlanOf.Text("""
                tool wrench "torque wrench"
                machine rig "Rig" { part lid "lid" }
                procedure p "P" on rig { stage "S" { remove lid { tool wrench } } }
                """).Tools.Select(tool => tool.Title));

    [Fact]
    public void A_wrench_in_a_file_that_the_procedure_does_not_use_is_not_there()
    {
        var report = LibraryCheck.Run(
            new MemorySourceStore([new("other.proc", Catalog), new("x.proc", "tool socket \"socket\"\n" + Rig("22 N.m"))]),
            TestContext.Current.CancellationToken);

        Assert.Contains("torque wrench", report.Procedures[0].CreatePlan()!.Step("Fasten 4 × bolt").Tools);
        Assert.Empty(report.Findings);
    }

    [Fact]
    public void Changes_are_counted_in_strip_and_refit()
    {
        var plan = PlanOf.Text(Catalog + """
            tool lever "lever"
            clip pin "pin" { tool lever }
            fastener bolt "bolt" { drive socket  torque 22 N.m }
            machine rig "Rig" { part lid "lid" { held by 4 bolt as lid_bolts  held by 2 pin as lid_pins } }
            procedure p "P" on rig { stage "S" { undo lid_bolts  release lid_pins  remove lid } }
            """);

        Assert.Equal(new PlanToolChanges(1, 0, 1, 8), plan.ToolChanges);
    }

    [Theory]
    [InlineData("bearing puller, 2 legs", false)]
    [InlineData("Pry bar", false)]
    [InlineData("plastic trim lever", false)]
    [InlineData("pulley holder", true)]
    [InlineData("lever", true)]
    public void What_only_takes_off_is_left_out_where_something_goes_on(string title, bool fits)
    {
        var plan = PlanOf.Text($$"""
            tool tool_1 "{{title}}"
            clip pin "pin" { tool tool_1 }
            machine rig "Rig" { part lid "lid" { held by 2 pin as pins } }
            procedure p "P" on rig { stage "S" { release pins  remove lid { tool tool_1 } } }
            """);

        Assert.Equal([title], plan.Step("Release 2 × pin").Tools);
        Assert.Equal(fits ? [title] : [], plan.Step("Engage 2 × pin").Tools);
        Assert.Equal(fits ? [title] : [], plan.Step("Fit the lid").Tools);
    }

    [Fact]
    public void What_the_refit_asks_for_by_itself_is_taken() =>
        Assert.Equal(
            ["bearing puller"],
            PlanOf.Text("""
                tool puller "bearing puller"
                fastener bolt "bolt" { torque 22 N.m }
                machine rig "Rig" { part lid "lid" { held by 2 bolt as bolts } }
                procedure p "P" on rig { stage "S" { undo bolts  remove lid { refit { tool puller } } } }
                """).Step("Fit the lid").Tools);

    private static string Rig(string torque) => $$"""
        fastener bolt "bolt" { drive socket  torque {{torque}} }
        machine rig "Rig" { part lid "lid" { held by 4 bolt as lid_bolts } }
        procedure p "P" on rig { stage "S" { undo lid_bolts } }
        """;
}
