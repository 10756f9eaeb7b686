namespace ProcScript.Analysis.Tests.Refitting;

/// <summary>What serves only once, or has been disturbed, does not go back as it was.</summary>
public sealed class RenewalTests
{
    private const string Housing = """
        part housing "housing" {
          held by 2 pin as housing_pins
          part ring "ring" { single use  held by 1 pin as ring_pin }
        }
        """;

    [Fact]
    public void A_part_that_serves_once_and_came_off_before_the_housing_was_replaced_does_not_go_back() => Assert.Equal(
        ["PRC4005"],
        OfRenewal(Checked.Stage(Housing, "release ring_pin remove ring release housing_pins remove housing", "work { replace housing }")));

    [Fact]
    public void A_new_housing_brings_what_was_left_inside_the_old_one() => Assert.Empty(
        OfRenewal(Checked.Stage(Housing, "release housing_pins remove housing", "work { replace housing }")));

    [Theory]
    // The seal is out of the housing and stays as it is: the new housing does not bring it.
    [InlineData("release lid_pins remove lid release seal_pin remove seal release housing_pins remove housing", true)]
    [InlineData("release lid_pins remove lid release housing_pins remove housing", false)]
    public void What_was_disturbed_is_new_with_the_housing_only_where_it_was_left_in_it(string steps, bool isFound) => Assert.Equal(
        isFound,
        IsRenewalAskedFor(
            """
            part lid "lid" { held by 2 pin as lid_pins }
            part housing "housing" {
              held by 2 pin as housing_pins
              part seal "seal" { renew with lid  held by 1 pin as seal_pin }
            }
            """,
            steps,
            "work { replace housing }"));

    [Theory]
    [InlineData("release lid_pins remove lid", "", true)]
    [InlineData("release lid_pins remove lid release tape_pin remove tape", "work { replace tape }", false)]
    [InlineData("release lid_pins remove lid release tape_pin remove tape", "", true)]
    // The lid and what it disturbs come off together.
    [InlineData("release box_pins remove box", "", false)]
    [InlineData("release lid_pins", "", false)]
    public void What_a_lid_disturbs_is_renewed_once_that_comes_off_by_itself(string steps, string work, bool isFound) => Assert.Equal(
        isFound,
        IsRenewalAskedFor(
            """
            part box "box" {
              held by 2 pin as box_pins
              part lid "lid" { held by 2 pin as lid_pins }
              part tape "tape" { renew with lid  held by 1 pin as tape_pin }
            }
            """,
            steps,
            work));

    [Theory]
    [InlineData("release lid_pins remove lid", "", true)]
    [InlineData("release lid_pins remove lid undo tie_bolts", "", true)]
    [InlineData("release lid_pins remove lid undo tie_bolts", "work { replace tie_bolts }", false)]
    public void A_joint_that_a_lid_disturbs_is_renewed(string steps, string work, bool isFound) => Assert.Equal(
        isFound,
        IsRenewalAskedFor(
            """
            part lid "lid" { held by 2 pin as lid_pins }
            part tie "tie" { held by 2 bolt as tie_bolts { renew with lid } }
            """,
            steps,
            work));

    [Theory]
    [InlineData("", true)]
    [InlineData("work { replace box }", false)]
    public void A_cover_that_was_left_on_a_box_is_new_with_it(string work, bool isFound) => Assert.Equal(
        isFound,
        IsRenewalAskedFor(
            """
            part lid "lid" { held by 2 pin as lid_pins }
            part box "box" {
              held by 2 pin as box_pins
              part plate "plate" { held by 2 bolt as plate_bolts { covered by 2 cap as seals { renew with lid } } }
            }
            """,
            "release lid_pins remove lid release box_pins remove box",
            work));

    [Fact]
    public void A_joint_is_disturbed_by_the_removal_of_what_it_ties_with_all_that_lies_in_it() => Assert.Contains(
        "PRC5031",
        Checked.Stage(
            """
            part pump "pump" {
              held by 2 bolt as pump_bolts { renew with gasket }
              part gasket "gasket"
            }
            """,
            "undo pump_bolts remove pump").Codes);

    private static bool IsRenewalAskedFor(string parts, string steps, string work) => Checked.Stage(parts, steps, work).Codes.Contains("PRC5031");

    private static IEnumerable<string> OfRenewal(Checked check) => check.Codes.Where(code => code is "PRC4005" or "PRC5031");
}
