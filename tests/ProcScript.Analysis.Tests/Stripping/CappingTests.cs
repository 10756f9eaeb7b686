using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Tests.Stripping;

/// <summary>What is opened is closed again at once, so that no dirt gets in.</summary>
public sealed class CappingTests
{
    [Theory]
    [InlineData("", "disconnect lines, cap lines, remove pump, cap pump")]
    // A new pump comes closed: only what stays in the machine is capped.
    [InlineData("work { replace pump }", "disconnect lines, cap lines, remove pump, cap pump, replace pump")]
    public void Each_opening_is_capped_as_soon_as_it_is_open(string rest, string strip) => Assert.Equal(
        strip,
        string.Join(", ", Checked.Unasked(
            $$"""
            tool key "key"
            tool closing_cap "closing cap"
            tool bore_plug "bore plug"
            line union "union" { tool key  cap 2 closing_cap }
            machine m "M" { part pump "pump" { cap 1 bore_plug  piped by 2 union as lines } }
            procedure p "P" on m { stage "S" { disconnect lines  remove pump } {{rest}} }
            """).Strip));

    /// <summary>What goes on by itself is waited for where it has to be over; a cap is put on before anything else is done.</summary>
    [Fact]
    public void No_cap_is_put_on_in_the_background()
    {
        var strip = Checked.Unasked(
            """
            tool key "key"
            tool closing_cap "closing cap"
            line union "union" { tool key  cap 2 closing_cap }
            machine m "M" { part pump "pump" { piped by 2 union as lines } }
            procedure p "P" on m { stage "S" { task "Let it drip off." in background  disconnect lines } }
            """).Only.Outcome.Strip!.Actions;

        Assert.Equal([(Verb.Task, true), (Verb.Disconnect, false), (Verb.Cap, false)], strip.Select(action => (action.Verb, action.InBackground)));
    }

    [Fact]
    public void A_line_between_two_parts_that_both_go_away_is_not_capped_nor_a_part_that_has_no_cap() => Assert.Equal(
        ["disconnect lines", "remove pump", "remove tank", "replace pump", "replace tank"],
        Checked.Unasked(
            """
            tool key "key"
            tool closing_cap "closing cap"
            line union "union" { tool key  cap 2 closing_cap }
            machine m "M" {
              part tank "tank"
              part pump "pump" { piped by 2 union as lines { to tank } }
            }
            procedure p "P" on m { stage "S" { disconnect lines  remove pump  remove tank } work { replace pump  replace tank } }
            """).Strip);
}
