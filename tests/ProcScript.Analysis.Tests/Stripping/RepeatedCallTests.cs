namespace ProcScript.Analysis.Tests.Stripping;

/// <summary>Which call is told where one comes to what is done already.</summary>
public sealed class RepeatedCallTests
{
    private const string Machine = """
        clip pin "pin"
        machine m "M" {
          part lid "lid" { held by 2 pin as lid_pins }
          part hood "hood" { held by 2 pin as hood_pins }
          part fan "fan" { behind lid  held by 2 pin as fan_pins }
        }
        procedure lid_off "Lid" on m { stage "S" { release lid_pins  remove lid } }
        procedure hood_off "Hood" on m { stage "S" { release hood_pins  remove hood } }
        procedure both_off "Both" on m { do lid_off  do hood_off }

        """;

    [Fact]
    public void Who_calls_the_same_twice_is_told_at_the_second_call_and_not_at_what_that_calls() => Assert.Equal(
        ["`do both_off` comes to what is done already"],
        Findings("procedure all \"All\" on m { do both_off  do both_off }"));

    [Fact]
    public void Who_has_done_all_of_it_by_hand_is_told_at_the_call_that_brings_all_of_it() => Assert.Equal(
        ["`do both_off` comes to what is done already"],
        Findings("procedure all \"All\" on m { stage \"T\" { release lid_pins remove lid release hood_pins remove hood }  do both_off }"));

    [Fact]
    public void What_is_done_twice_by_hand_is_told_beside_a_call_that_comes_to_what_is_done() => Assert.Equal(
        ["`hood_pins` is released already", "`do lid_off` comes to what is done already"],
        Findings("procedure all \"All\" on m { stage \"T\" { release hood_pins  release hood_pins  remove hood }  do lid_off  do lid_off }"));

    private static IEnumerable<string> Findings(string procedure) =>
        Checked.Unasked(Machine + procedure).Report.Findings.Select(found => found.Finding.Message.Split(':')[0]);
}
