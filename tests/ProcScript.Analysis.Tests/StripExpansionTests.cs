namespace ProcScript.Analysis.Tests;

public sealed class StripExpansionTests
{
    [Fact]
    public void Whatever_holds_and_hides_a_part_goes_first()
    {
        var check = Checked.Stage(
            """
            energy mains "mains" { isolate "Off."  verify "Dark."  restore "On." }
            fluid oil "oil" { charge 2 ± 0.1 L  empty "Drain."  fill "Fill." }
            part loom "loom"
            part hood "hood" {
              held by 2 bolt as hood_bolts { covered by 2 cap as hood_caps }
              wired by 1 plug_2 as hood_plug { to loom  on mains  behind hood }
              aside "Tilt it." needs hood_bolts
            }
            part grille "grille" { held by 1 pin as grille_pin }
            part pump "pump" {
              behind hood, grille
              held by 3 bolt as pump_bolts
              piped by 2 hose as pump_hoses { carries oil }
            }
            """,
            "    strip pump");

        Assert.Equal(
            [
                "release hood_caps", "undo hood_bolts", "aside hood",
                "release grille_pin", "remove grille",
                "undo pump_bolts", "empty oil", "disconnect pump_hoses", "remove pump",
            ],
            check.Strip);
        Assert.Empty(check.Findings);
        Assert.True(check.Only.IsProven);
    }

    [Fact]
    public void A_part_that_hides_its_own_plug_goes_aside_for_it()
    {
        var check = Checked.Stage(
            """
            energy mains "mains" { isolate "Off."  verify "Dark."  restore "On." }
            part loom "loom"
            part hood "hood" {
              held by 2 bolt as hood_bolts
              wired by 1 plug_2 as hood_plug { to loom  on mains  behind hood }
              aside "Tilt it." needs hood_bolts
            }
            """,
            "    strip hood");

        Assert.Equal(["undo hood_bolts", "aside hood", "isolate mains", "unplug hood_plug", "remove hood"], check.Strip);
    }

    [Fact]
    public void A_control_that_needs_power_is_set_before_the_power_goes()
    {
        var check = Checked.Stage(
            """
            energy mains "mains" { isolate "Off."  verify "Dark."  restore "On." }
            control lever "lever" { up, down  needs mains live }
            part loom "loom"
            part lamp "lamp" {
              wired by 1 plug_2 as lamp_plug { to loom  on mains }
              held by 1 pin as lamp_pin { needs lever at down }
            }
            """,
            "    strip lamp");

        Assert.Equal(["set lever to down", "isolate mains", "unplug lamp_plug", "release lamp_pin", "remove lamp"], check.Strip);
        Assert.True(check.Only.IsProven);
    }

    [Fact]
    public void Only_what_is_still_there_is_taken_off()
    {
        var check = Checked.Stage(
            """
            part hood "hood" { held by 4 bolt as hood_bolts }
            part pump "pump" { behind hood  held by 3 bolt as pump_bolts }
            """,
            """
            undo 3 of hood_bolts
            strip pump
            """);

        Assert.Equal(["undo 3 of hood_bolts", "undo 1 of hood_bolts", "remove hood", "undo pump_bolts", "remove pump"], check.Strip);
    }

    [Fact]
    public void What_hides_behind_the_part_that_it_lies_in_is_freed_on_the_bench()
    {
        var check = Checked.Stage(
            """
            part hood "hood" {
              held by 4 bolt as hood_bolts
              part lamp "lamp" { behind hood  held by 1 pin as lamp_pin }
            }
            """,
            "    strip lamp");

        Assert.Equal(["undo hood_bolts", "remove hood", "release lamp_pin", "remove lamp"], check.Strip);
        Assert.True(check.Only.IsProven);
    }

    [Fact]
    public void A_need_that_the_machine_has_no_way_to_is_told_at_the_machine()
    {
        var check = Checked.Stage(
            """
            control lever "lever" { up, down }
            part hood "hood" { held by 1 pin as hood_pin { needs lever at down } }
            part lamp "lamp" {
              behind hood
              needs hood aside
              held by 1 pin as lamp_pin
            }
            """,
            "    strip lamp");

        Assert.Equal(["PRC2002 nobody can ever get at `lamp_pin`"], check.Findings);
    }

    [Fact]
    public void A_chain_of_ten_thousand_parts_unwinds()
    {
        var parts = string.Join('\n', Enumerable.Range(0, 10_000).Select(i =>
            $"part p{i} \"part {i}\" {{ {(i == 0 ? "" : $"behind p{i - 1}")} }}"));
        var check = Checked.Stage(parts, "    strip p9999");

        Assert.Empty(check.Findings);
        Assert.Equal(10_000, check.Strip.Count());
        Assert.Equal("fit p9999", check.Refit.First());
    }
}
