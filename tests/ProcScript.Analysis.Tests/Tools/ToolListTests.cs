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
    [InlineData("20, 40 N.m + 90°", "torque wrench, 20 to 120 N·m", "angle gauge", "paint marker")]
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

    /// <summary>What measures is for the proof; the spanner is for both ways.</summary>
    [Theory]
    [InlineData("tool socket, tool_1  isolate \"Off.\"  verify \"Measure.\" expect <= 1 V", "socket, tool_1", "socket")]
    [InlineData("tool socket  isolate \"Off.\"  verify \"Measure.\" with tool_1 at \"the post\" expect <= 1 V", "socket, tool_1", "socket")]
    public void What_measures_is_not_asked_for_where_an_energy_only_comes_back(string energy, string isolate, string restore)
    {
        var plan = PlanOf.Text($$"""
            tool socket "socket"
            tool tool_1 "two-pole voltage tester, 1000 V"
            machine rig "Rig" { energy mains "230 V mains" { {{energy}}  restore "On." }  part lid "lid" { needs mains isolated } }
            procedure p "P" on rig { stage "S" { isolate mains  remove lid } }
            """);

        Assert.Equal(isolate.Replace("tool_1", "two-pole voltage tester, 1000 V", StringComparison.Ordinal).Split(", ", 2), plan.Step("Isolate the 230 V mains").Tools);
        Assert.Equal([restore], plan.Step("Restore the 230 V mains").Tools);
        Assert.Equal([("socket", 2), ("two-pole voltage tester, 1000 V", 1)], plan.Tools.Select(tool => (tool.Title, tool.Steps)));
    }

    [Theory]
    [InlineData("tool pen \"paint marker, yellow\"", "A line across hub and shaft.", "paint marker, yellow")]
    [InlineData("", "A line across hub and shaft.", "paint marker")]
    [InlineData("tool pen \"paint marker, yellow\"", "Two punch marks, one on each.")]
    public void A_mark_takes_what_it_is_made_with(string tool, string mark, params string[] tools)
    {
        var plan = PlanOf.Text($$"""
            tool socket "socket"
            {{tool}}
            fastener nut "nut" { drive socket }
            machine rig "Rig" { part wheel "wheel" { mark "{{mark}}"  held by 1 nut as wheel_nut } }
            procedure p "P" on rig { stage "S" { undo wheel_nut  remove wheel } }
            """);

        Assert.Equal(["socket", .. tools], plan.Step("Undo 1 × nut").Tools);
        Assert.Equal(["socket"], plan.Step("Fasten 1 × nut").Tools);
        Assert.Equal(["socket", .. tools], plan.Tools.Select(one => one.Title));
    }

    /// <summary>The hub is under the pad: nobody can mark it before that is off, and everybody can while the nut still holds the wheel.</summary>
    [Fact]
    public void A_mark_is_made_where_its_part_can_be_reached_and_is_still_in_place()
    {
        var plan = PlanOf.Text("""
            clip tab "tab"
            fastener nut "nut" { }
            machine rig "Rig" {
              part wheel "wheel" {
                mark "A line across hub and shaft."
                held by 1 nut as wheel_nut { needs pad out }
                part pad "pad" { held by 2 tab as pad_tabs }
              }
            }
            procedure p "P" on rig { stage "S" { release pad_tabs  remove pad  loosen wheel_nut  undo wheel_nut  remove wheel } }
            """);

        Assert.Equal(["Loosen 1 × nut"], plan.AllSteps().Where(step => !step.Marks.IsEmpty).Select(step => step.Text));
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
