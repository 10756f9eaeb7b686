namespace ProcScript.Analysis.Tests.Stripping;

/// <summary>
/// A step that is written <c>where needed</c> is left out where what it brings about is so already, and names what has brought that about; else it
/// does what is left of it.
/// </summary>
public sealed class WhereNeededTests
{
    private const string AtTheStart = "left out: the machine comes in so";

    private const string Machine = """
        energy mains "mains" { isolate "Pull the plug."  verify "It stays still." at "the terminals" { behind lid }  restore "Plug it in." }
        fluid oil "oil" { charge 2 ± 0.1 L  empty "Drain it."  fill "Fill it." }
        control table "table" { low, high }
        part lid "lid" { held by 4 bolt as lid_bolts  aside "Tilt it." needs lid_bolts }
        part strap "strap" { temporary  held by 2 bolt as strap_bolts }
        """;

    [Theory]
    // A joint is loose enough where it is slack and where it is off; where some of it is off and the rest tight it is not.
    [InlineData("", "loosen lid_bolts", "loosen lid_bolts")]
    [InlineData("loosen lid_bolts", "loosen lid_bolts", "left out: loosen lid_bolts")]
    [InlineData("loosen lid_bolts undo lid_bolts", "loosen lid_bolts", "left out: undo lid_bolts")]
    [InlineData("undo lid_bolts", "loosen lid_bolts", "left out: undo lid_bolts")]
    [InlineData("undo 2 of lid_bolts", "loosen lid_bolts", "loosen 2 of lid_bolts")]
    // A number means so many altogether.
    [InlineData("undo 2 of lid_bolts", "undo 2 of lid_bolts", "left out: undo 2 of lid_bolts")]
    [InlineData("undo 2 of lid_bolts", "undo 3 of lid_bolts", "undo 1 of lid_bolts")]
    [InlineData("undo 2 of lid_bolts", "undo lid_bolts", "undo 2 of lid_bolts")]
    [InlineData("undo lid_bolts", "undo lid_bolts", "left out: undo lid_bolts")]
    // What is out is neither moved aside nor propped any more.
    [InlineData("", "remove strap", AtTheStart)]
    [InlineData("undo lid_bolts remove lid", "remove lid", "left out: remove lid")]
    [InlineData("undo lid_bolts remove lid", "strip lid", "left out: remove lid")]
    [InlineData("undo lid_bolts remove lid", "aside lid", "left out: remove lid")]
    [InlineData("undo lid_bolts aside lid", "aside lid", "left out: aside lid")]
    [InlineData("undo lid_bolts aside lid", "remove lid", "remove lid")]
    [InlineData("support lid undo lid_bolts remove lid", "support lid", "left out: remove lid")]
    [InlineData("support lid", "support lid", "left out: support lid")]
    [InlineData("", "support lid", "support lid")]
    // What is on the machine for the job alone is put on and taken off in the strip.
    [InlineData("", "fit strap", "fit strap")]
    [InlineData("fit strap", "fit strap", "left out: fit strap")]
    [InlineData("fit strap", "fasten strap_bolts", "fasten strap_bolts")]
    [InlineData("fit strap fasten 1 of strap_bolts", "fasten strap_bolts", "fasten 1 of strap_bolts")]
    [InlineData("fit strap fasten strap_bolts", "fasten strap_bolts", "left out: fasten strap_bolts")]
    [InlineData("fit strap fasten strap_bolts", "tighten strap_bolts", "left out: fasten strap_bolts")]
    [InlineData("fit strap fasten strap_bolts loosen strap_bolts", "tighten strap_bolts", "tighten strap_bolts")]
    [InlineData("fit strap fasten strap_bolts loosen strap_bolts tighten strap_bolts", "tighten strap_bolts", "left out: tighten strap_bolts")]
    // Energies, fluids and controls.
    [InlineData("isolate mains", "isolate mains", "left out: isolate mains")]
    [InlineData("isolate mains undo lid_bolts remove lid", "verify mains", "verify mains")]
    [InlineData("undo lid_bolts remove lid isolate mains", "verify mains", "left out: isolate mains")]
    [InlineData("empty oil", "empty oil", "left out: empty oil")]
    [InlineData("", "empty oil", "empty oil")]
    [InlineData("set table to high", "set table to high", "left out: set table to high")]
    [InlineData("set table to high", "set table to low", "set table to low")]
    [InlineData("", "set table to low", AtTheStart)]
    // Work is done once the same has been done to the same thing.
    [InlineData("clean lid", "clean lid", "left out: clean lid")]
    [InlineData("clean table", "clean lid", "clean lid")]
    [InlineData("undo lid_bolts", "clean lid_bolts", "clean lid_bolts")]
    [InlineData("undo lid_bolts clean lid_bolts", "clean lid_bolts", "left out: clean lid_bolts")]
    [InlineData("undo lid_bolts remove lid replace lid", "replace lid", "left out: replace lid")]
    [InlineData("undo lid_bolts remove lid", "replace lid", "replace lid")]
    public void A_step_is_left_out_where_it_is_done_already(string done, string step, string becomes)
    {
        var run = Checked.Stage(Machine, $"{done} {step} where needed").Only.Outcome.Strip!;

        var found = run.Skipped is [var skipped] ? skipped.DoneBy < 0 ? AtTheStart : $"left out: {Checked.Line(run.Actions[skipped.DoneBy])}"
            : Checked.Line(run.Actions[^1]);
        Assert.Equal(becomes, found);
    }

    [Fact]
    public void What_is_discarded_already_is_not_discarded_again_and_nothing_is_said()
    {
        var check = Checked.Unasked(
            """
            clip pin "pin"
            machine m "M" { part lid "lid" { held by 4 pin as lid_pins } }
            procedure p "P" on m { do lid_away  do lid_away where needed }
            procedure lid_away "Lid" on m { stage "S" { release lid_pins  remove lid  discard lid because "It goes." } }
            """);
        var run = check.Procedure("p").Outcome.Strip!;

        Assert.Empty(check.Findings);
        Assert.Single(run.Discards);
        Assert.Equal(["release lid_pins", "remove lid"], run.Skipped.Select(skipped => Checked.Line(run.Actions[skipped.DoneBy])));
    }

    [Theory]
    [InlineData("undo lid_bolts where needed  undo lid_bolts where needed", "", "undo lid_bolts")]
    [InlineData("set table to high", "work { clean lid where needed  clean lid where needed }", "set table to high, clean lid")]
    public void Steps_that_are_all_written_so_leave_out_what_the_first_of_them_did(string steps, string work, string done)
    {
        var run = Checked.Stage(Machine, steps, work).Only.Outcome.Strip!;

        Assert.Equal(done, string.Join(", ", Checked.Lines(run.Actions)));
        Assert.Equal(run.Actions.Length - 1, Assert.Single(run.Skipped).DoneBy);
    }

    [Fact]
    public void What_is_not_on_is_not_tight()
    {
        var check = Checked.Stage(Machine, "fit strap tighten strap_bolts where needed");

        Assert.Empty(check.Only.Outcome.Strip!.Skipped);
        Assert.Contains(check.Codes, code => code.StartsWith("PRC3", StringComparison.Ordinal));
    }
}
