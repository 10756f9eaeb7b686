namespace ProcScript.Analysis.Tests;

public sealed class WorkedExampleTests
{
    [Fact]
    public void The_example_of_the_language_has_one_finding_as_written_because_the_seat_is_unplugged_live()
    {
        // `seat_out` by itself isolates nothing; within the evaporator's procedure the battery is isolated before.
        var found = WorkedExample.Check().OnlyFinding;

        Assert.Equal("PRC3004", found.Rule.Code);
        Assert.Equal("the 12 V battery is live when `seat_switch` is unplugged", found.Message);
    }

    [Fact]
    public void Its_refit_is_the_exact_reverse_but_for_the_rules()
    {
        var report = WorkedExample.Check().Procedure("replace_evaporator");

        Assert.True(report.IsProven);
        Assert.Equal(
            [
                "fit evaporator", "fasten evap_bolts", "connect evap_unions",
                "fit roof", "fasten roof_bolts", "plug beacon_plug",
                "check Pour 0.2 L of water in the pan: both drain tubes run.",
                "fit headliner", "plug dome_plug", "return headliner", "engage liner_clips",
                "fit pillar_trim[right]", "engage pillar_clips[right]",
                "fit seat",
                "fit pillar_trim[left]", "engage pillar_clips[left]", "fasten grab_bolt", "engage grab_cap",
                "plug seat_switch", "return seat", "fasten seat_bolts", "engage seat_caps",
                "restore battery", "fill refrigerant",
            ],
            Checked.Lines(report.Outcome.Refit!.Actions));
    }

    [Fact]
    public void What_needs_the_fluid_out_waits_for_its_recovery_in_the_background()
    {
        var strip = WorkedExample.Check().Procedure("replace_evaporator").Outcome.Strip!;

        var waiting = Assert.Single(strip.Actions, action => !action.WaitsFor.IsEmpty);
        Assert.Equal("disconnect evap_unions", Checked.Line(waiting));
        Assert.Equal("empty refrigerant", Checked.Line(strip.Actions[Assert.Single(waiting.WaitsFor)]));
    }

    [Fact]
    public void A_forgotten_plug_reads_as_the_language_promises()
    {
        var check = WorkedExample.Check(text => text.Replace("            unplug dome_plug\n", "", StringComparison.Ordinal)
            .Replace("    unplug dome_plug\n", "", StringComparison.Ordinal)
            .Replace("    release seat_caps\n", "    isolate battery\n    release seat_caps\n", StringComparison.Ordinal)
            .Replace("    empty refrigerant in background\n    isolate battery\n", "    empty refrigerant in background\n", StringComparison.Ordinal));

        var found = check.OnlyFinding;
        Assert.Equal("PRC3001", found.Rule.Code);
        Assert.Equal("the headliner is still held when it is removed", found.Message);
        Assert.Equal("1 × 2-way connector `dome_plug` is still plugged", found.Label);
        Assert.Equal("remove", check.At(found.Primary).Split(' ')[^1]);
        var declared = Assert.Single(found.Related);
        Assert.Equal("declared here", declared.Label);
        Assert.EndsWith(": dome_plug", check.At(declared.Place), StringComparison.Ordinal);
        Assert.Equal("unplug `dome_plug` first; it is reached with the headliner aside", found.Help);
        var edit = Assert.Single(Assert.Single(found.Fixes).Edits);
        Assert.Equal("unplug dome_plug\n    ", edit.NewText);
        Assert.Equal(found.Primary.Span.Start, edit.Place.Span.Start);
    }
}
