namespace ProcScript.Analysis.Tests.Stripping;

/// <summary>Which way of a choice <c>strip</c> takes.</summary>
public sealed class WayTests
{
    [Fact]
    public void What_has_to_come_off_anyway_is_the_way() => Assert.Equal(
        ["release hood_pins", "remove hood", "release filter_pins", "remove filter"],
        Stripped(
            """
            part hood "hood" { held by 2 pin as hood_pins  aside "Tilt it." needs hood_pins }
            part flap "flap"
            part filter "filter" { behind flap or hood  held by 2 pin as filter_pins { needs hood out } }
            """));

    [Fact]
    public void The_time_that_counts_is_what_a_way_takes_beside_what_is_planned_already() => Assert.Equal(
        ["undo shield_bolts", "remove shield", "release lid_pins", "remove lid", "release filter_pins", "remove filter"],
        Stripped(
            """
            part shield "shield" { held by 8 bolt as shield_bolts }
            part lid "lid" { behind shield  held by 2 pin as lid_pins }
            part hatch "hatch" { held by 6 pin as hatch_pins }
            part filter "filter" { behind lid or hatch  held by 2 pin as filter_pins { behind shield } }
            """));

    [Fact]
    public void A_way_that_undoes_what_else_is_needed_is_none() => Assert.Equal(
        ["release grille_pins", "remove grille", "release filter_pins", "remove filter"],
        Stripped(
            """
            control slide "slide" { back, front }
            part grille "grille" { held by 4 pin as grille_pins }
            part filter "filter" { held by 2 pin as filter_pins { needs slide at back  needs slide at front or grille out } }
            """));

    [Fact]
    public void A_control_that_is_set_elsewhere_opens_no_way() => Assert.Equal(
        ["set slide to front", "release hood_pins", "remove hood", "set slide to back", "release filter_pins", "remove filter"],
        Stripped(
            """
            control slide "slide" { home, front, back }
            part hood "hood" { held by 2 pin as hood_pins { needs slide at front } }
            part grille "grille" { held by 40 bolt as grille_bolts }
            part filter "filter" { behind hood  held by 2 pin as filter_pins { needs slide at back or grille out } }
            """));

    private static IEnumerable<string> Stripped(string machine) => Checked.Stage(machine, "strip filter").Strip;
}
