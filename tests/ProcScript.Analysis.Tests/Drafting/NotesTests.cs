using CsCheck;
using ProcScript.Analysis.Drafting;
using ProcScript.Analysis.Drafting.Notes;
using static ProcScript.Analysis.Tests.Drafting.Drafting;

namespace ProcScript.Analysis.Tests.Drafting;

public sealed class NotesTests
{
    private static readonly Gen<string> Words = Gen.OneOf<string>(
        "undo", "unbolt", "the", "4", "M8x25", "bolts", "guard", "and", "then", "remove", "take", "off", "drain", "oil", "1.5 l", "(", ")", ",", ".", ":", "45 Nm", "disconnect", "hose",
        "plug", "mains", "switch", "set", "lever", "to", "down", "careful", "warning:", "check", "replace", "work", "stage", "\"", "{", "}", "\\", "//", "é", "2 people", "with a 13 mm socket", "on", "behind",
        "pull", "clip", "unclip", "cut", "cable ties", "refit", "wait", "5 min", "230 V", "#", "-", "1.", "left", "it", "lift", "motor", "31 kg", "\u200B", "—");

    [Theory]
    [InlineData("Undo the 4 M10x30 bolts of the seat", "undo seat_bolts", "held by 4 m10x30 as seat_bolts")]
    [InlineData("1) Unbolt the seat (4x M10 x 30, 45 Nm)", "undo seat_bolts", "held by 4 m10x30 as seat_bolts { torque 45 N.m }")]
    [InlineData("- unscrew 6 screws 4x16 from the cap", "undo cap_screws", "held by 6 screw_4x16 as cap_screws")]
    [InlineData("* Unclip the cover", "release cover_clips", "as cover_clips")]
    [InlineData("Pull off the fan wheel", "remove fan_wheel", "part fan_wheel \"fan wheel\"")]
    [InlineData("Pull off the fuel hose", "disconnect fuel_hose", "piped by 1 fuel_hose as fuel_hose")]
    [InlineData("Disconnect the lamp plug", "unplug lamp_plug", "wired by 1 lamp_plug as lamp_plug")]
    [InlineData("Disconnect the battery", "isolate battery", "energy battery \"battery\"")]
    [InlineData("Drain the oil (1.5 litres)", "empty oil", "charge 1.5 L")]
    [InlineData("Lift the motor out, 2 people, 31 kg", "remove motor { people 2 }", "mass 31 kg")]
    [InlineData("Take the guard off", "remove guard", "part guard \"guard\"")]
    [InlineData("Cut both cable ties", "cut cable_ties", "held by 2 cable_tie as cable_ties")]
    [InlineData("Loosen the belt bolts", "loosen belt_bolts", "as belt_bolts")]
    [InlineData("Set the lever to down", "set lever to down", "control lever \"lever\"")]
    [InlineData("Switch the machine off at the wall", "isolate mains", "isolate \"Switch the machine off at the wall.\"")]
    [InlineData("Support the gearbox", "support gearbox", "part gearbox")]
    [InlineData("Swing the panel aside", "aside panel", "aside \"Swing the panel aside.\"")]
    [InlineData("Undo the hub nut with a 24 mm socket", "undo hub_nut { tool socket_24 }", "tool socket_24 \"24 mm socket\" { size 24 mm }")]
    [InlineData("Using a T30 bit undo the 6 lid screws", "undo lid_screws { tool t30_bit }", "held by 6 lid_screw as lid_screws")]
    [InlineData("4 off M8 x 25 tray bolts", "undo tray_bolts  // draft: the notes name it without a verb", "held by 4 m8x25 as tray_bolts")]
    [InlineData("Remove the split pin then the castle nut", "release split_pin\n", "locked by 1 split_pin as split_pin  // draft: does the split pin lock the castle nut")]
    [InlineData("Carefully lift the glass out", "remove glass { how \"Carefully lift the glass out.\" }", "part glass")]
    [InlineData("With a helper lift the hood off", "remove hood { people 2 }", "part hood")]
    [InlineData("Slide the red lock back and unplug the heater plug", "unplug heater_plug\n", "release \"Slide the red lock back.\"")]
    [InlineData("Drain the oil (8 l) - WARNING hot", "warning \"Hot.\"\n", "charge 8 L")]
    [InlineData("Undo the hub nut. CAUTION: the spring jumps", "caution \"The spring jumps.\"\n    undo hub_nut", "as hub_nut")]
    [InlineData("Undo 8 wheel nuts (110 +/- 5 Nm)", "undo wheel_nuts", "torque 110 ± 5 N.m")]
    [InlineData("Swap the relay", "remove relay  // draft: the notes only say that it is replaced", "goal replace relay")]
    [InlineData("Wiggle the thingummy until it lets go", "task \"Wiggle the thingummy until it lets go.\"  // draft: what is done here, and to what?", "task")]
    [InlineData("Warning: the spring is loaded", "warning \"The spring is loaded.\"", "task")]
    public void A_line_becomes_a_step_and_what_it_needs(string line, string step, string declared)
    {
        var drafted = Drafted(line);

        Assert.Contains(step, drafted, StringComparison.Ordinal);
        Assert.Contains(declared, drafted, StringComparison.Ordinal);
        AssertSettled(drafted);
        Assert.Empty(Errors(drafted));
    }

    [Fact]
    public void A_line_may_ask_for_several_things_and_hardware_goes_by_what_comes_off_next()
    {
        var drafted = Drafted("Undo the 6 M5x12 bolts and take the front guard off, then unplug the motor.\nRemove the motor");

        Assert.Contains("undo front_guard_bolts\n", drafted, StringComparison.Ordinal);
        Assert.Contains("remove front_guard\n", drafted, StringComparison.Ordinal);
        Assert.Contains("unplug motor_plug\n", drafted, StringComparison.Ordinal);
        Assert.Contains("remove motor\n", drafted, StringComparison.Ordinal);
        Assert.Empty(Errors(drafted));
    }

    [Fact]
    public void Headings_titles_work_and_the_way_back_find_their_places()
    {
        var drafted = Drafted(
            """
            Machine: Tollard F4 fan
            Job: New motor
            # Make safe
            1. Switch off the mains, 230 V
            2. Check that it is dead
            Guard:
            3. Undo 6 guard bolts
            4. Take off the guard
            5. Lift out the motor
            6. Fit a new motor
            7. Refit in reverse, guard bolts 5 Nm
            8. Check that the wheel runs free
            """);

        Assert.Contains("machine m \"Tollard F4 fan\"", drafted, StringComparison.Ordinal);
        Assert.Contains("procedure new_motor \"New motor\" on m {\n  goal replace motor\n", drafted, StringComparison.Ordinal);
        Assert.Contains("verify \"Check that it is dead.\"", drafted, StringComparison.Ordinal);
        Assert.Contains("voltage 230 V", drafted, StringComparison.Ordinal);
        Assert.Contains("stage \"Guard\" {", drafted, StringComparison.Ordinal);
        Assert.Contains("work {\n    replace motor\n  }", drafted, StringComparison.Ordinal);
        Assert.Contains("held by 6 guard_bolt as guard_bolts { torque 5 N.m }", drafted, StringComparison.Ordinal);
        Assert.Contains("refit {\n    // Refit in reverse, guard bolts 5 Nm\n    check \"Check that the wheel runs free.\"\n  }", drafted, StringComparison.Ordinal);
        AssertSettled(drafted);
        Assert.Empty(Errors(drafted));
    }

    [Fact]
    public void Any_lines_give_a_source_without_errors_of_its_own() => Words.Array[1, 9].Select(words => string.Join(' ', words)).Array[1, 8].Sample(
        lines =>
        {
            if (SourceDraft.OfNotes(string.Join('\n', lines), "m", "notes.txt") is { } draft)
            {
                AssertSettled(draft.Text);
                Assert.DoesNotContain(Errors(draft.Text), error => error.StartsWith("PRC1", StringComparison.Ordinal) || error.StartsWith("PRC2", StringComparison.Ordinal));
            }
        },
        iter: Depth.Of(1600));

    [Fact]
    public void Every_word_and_number_that_tells_something_stands_somewhere_in_the_source() => Words.Array[1, 9].Select(words => string.Join(' ', words)).Array[1, 8].Sample(
        lines =>
        {
            if (SourceDraft.OfNotes(string.Join('\n', lines), "m", "notes.txt") is { } draft)
            {
                // "1." numbers a line, "#" heads the lines below.
                Assert.Empty(lines.SelectMany(NoteRest.Telling).Except(NoteRest.Words(draft.Text.Replace('_', ' '))).Except(["1", "new"]));
            }
        },
        iter: Depth.Of(1600));

    [Fact]
    public void A_heading_above_a_warning_of_the_way_back_stays()
    {
        Assert.Contains("Cable ties", Drafted("Undo 4 lid bolts\nTake off the lid\nRefit in reverse\n# Cable ties\nWarning: the edge is sharp"), StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_later_line_adds_to_a_step_leaves_what_its_own_line_says()
    {
        var drafted = Drafted("lift the lid 4 2 people\nunbolt ( lever oil .");

        Assert.Contains("how \"Lift the lid 4 2 people.\"", drafted, StringComparison.Ordinal);
        Assert.Contains("how \"Unbolt ( lever oil .\"", drafted, StringComparison.Ordinal);
        AssertSettled(drafted);
    }

    [Fact]
    public void No_word_that_is_not_understood_is_lost() => Gen.Char['b', 'z'].Array[7, 12].Select(letters => new string(letters)).Array[2, 6].Sample(
        words =>
        {
            var line = "Zq" + string.Join(' ', words);
            Assert.Contains($"task \"{line}.\"", Drafted(line), StringComparison.Ordinal);
        },
        iter: Depth.Of(200));

    private static string Drafted(string notes) => SourceDraft.OfNotes(notes, "m", "notes.txt")!.Text;
}
