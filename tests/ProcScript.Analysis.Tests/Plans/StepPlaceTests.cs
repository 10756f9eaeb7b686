namespace ProcScript.Analysis.Tests.Plans;

/// <summary>The other end of a joint is named where a step would read like another, and nowhere else.</summary>
public sealed class StepPlaceTests
{
    private const string Catalog = """
        tool socket_13 "13 mm socket"
        fastener hex "hex bolt" { drive socket_13 }
        connector two_way "2-way connector"
        clip cap "cap"

        """;

    [Fact]
    public void Two_plugs_of_one_part_are_told_apart_by_their_other_ends()
    {
        var plan = PlanOf.Text(Catalog + """
            machine rig "Rig" {
              each side in left, right { part motor[side] "{side} motor" }
              part loom "loom"
              part box "box" {
                each side in left, right { wired by 1 two_way as motor_plug[side] { to motor[side]  covered by 1 cap as plug_cap[side] } }
                wired by 2 two_way as main_plugs { to loom }
              }
            }
            procedure p "P" on rig {
              stage "Box" { release plug_cap[left]  release plug_cap[right]  unplug motor_plug[left]  unplug motor_plug[right]  unplug main_plugs  remove box }
            }
            """);

        Assert.Equal(
            [
                "Release 1 × cap: box, to left motor", "Release 1 × cap: box, to right motor",
                "Unplug 1 × 2-way connector: box, to left motor", "Unplug 1 × 2-way connector: box, to right motor",
                "Unplug 2 × 2-way connector: box", "Remove the box: ",
            ],
            plan.Strip[0].Steps.Select(step => $"{step.Text}: {step.Where}"));
        Assert.Equal(
            ["box", "box, to right motor", "box, to left motor"],
            plan.Refit[0].Steps.Where(step => step.Verb == "plug").Select(step => step.Where));
    }

    [Fact]
    public void What_an_author_places_or_what_differs_in_count_has_no_other_end()
    {
        var plan = PlanOf.Text(Catalog + """
            machine rig "Rig" {
              part base "base"
              part box "box" {
                held by 2 hex as front { to base  at "front" }
                held by 2 hex as rear { at "rear" }
                held by 3 hex as side { to base }
              }
            }
            procedure p "P" on rig { stage "Box" { undo front  undo rear  undo side  remove box } }
            """);

        Assert.Equal(["box, front", "box, rear", "box", ""], plan.Strip[0].Steps.Select(step => step.Where));
    }
}
