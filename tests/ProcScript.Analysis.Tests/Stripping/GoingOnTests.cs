namespace ProcScript.Analysis.Tests.Stripping;

/// <summary>After a mistake the strip goes on as the author meant it, so that nothing is told that only follows from it.</summary>
public sealed class GoingOnTests
{
    [Fact]
    public void A_fluid_under_the_wrong_verb_counts_as_out() => Assert.Equal(
        ["PRC3007"],
        Checked.Stage(
            """
            fluid oil "oil" { charge 2 ± 0.1 L  empty "Drain it."  fill "Fill it." }
            part pump "pump" { piped by 2 hose as hoses { carries oil } }
            """,
            "isolate oil disconnect hoses remove pump").Codes);

    [Theory]
    [InlineData("release lid_pins remove lid")]
    [InlineData("remove lid release lid_pins")]
    public void What_an_author_asks_for_is_told_once_and_as_the_author_says_it(string steps) => Assert.Single(
        Checked.Stage(
            """
            energy mains "mains" { isolate "Off."  verify "Dark."  restore "On." }
            part lid "lid" { needs mains isolated  held by 2 pin as lid_pins }
            """,
            steps).Codes,
        "PRC3009");

    [Theory]
    [InlineData("empty oil", false)]
    [InlineData("clean pump", false)]
    [InlineData("measure \"Voltage\" expect 1 .. 2 V", false)]
    [InlineData("inspect pump", true)]
    [InlineData("isolate mains", true)]
    public void Only_work_that_goes_on_by_itself_is_left_alone(string step, bool isFound) => Assert.Equal(
        isFound,
        Checked.Stage(
            """
            energy mains "mains" { isolate "Off."  verify "Dark."  restore "On." }
            fluid oil "oil" { charge 2 ± 0.1 L  empty "Drain it."  fill "Fill it." }
            part pump "pump"
            """,
            $"{step} in background").Codes.Contains("PRC3019"));

    [Fact]
    public void What_is_replaced_while_it_is_still_in_place_is_replaced_all_the_same()
    {
        var check = Checked.Stage("""part lid "lid" { held by 2 pin as lid_pins }""", "release lid_pins", "goal replace lid work { replace lid }");

        Assert.Equal(["PRC3012"], check.Codes);
        Assert.Equal(["release lid_pins", "replace lid"], check.Strip);
    }

    [Fact]
    public void A_step_is_not_moved_before_what_it_needs_done()
    {
        var found = Checked.Stage(
            """
            energy mains "mains" { isolate "Off."  verify "Dark."  restore "On." }
            part lid "lid" { held by 2 pin as lid_pins }
            control slide "slide" { back, front  behind lid  needs mains live }
            """,
            "isolate mains release lid_pins remove lid set slide to front").OnlyFinding;

        Assert.Equal("PRC3018", found.Rule.Code);
        Assert.Equal(["Move `isolate mains` to after `set slide to front`"], found.Fixes.Select(fix => fix.Title));
    }
}
