using ProcScript.Analysis.Plans;

namespace ProcScript.Analysis.Tests.Plans;

public class HidingMapTests
{
    private const string Rig = SampleText.Catalog + """
        machine rig "Rig" {
          part shield "shield" { held by 1 m8x25 as shield_bolt }
          part hood "hood" { held by 1 m8x25 as hood_bolt }
          part body "body" {
            behind shield
            held by 1 m8x25 as body_bolt
            part core "core" { held by 1 m8x25 as core_bolt }
          }
          part arm "arm" { held by 1 m8x25 as arm_bolt  aside needs arm_bolt, hood out }
        }

        """;

    [Fact]
    public void What_lies_in_a_part_is_hidden_by_what_hides_the_part()
    {
        var plan = PlanOf.Text(Rig + """
            procedure p "P" on rig {
              goal remove core
              stage "Core" { undo shield_bolt  remove shield  undo core_bolt  remove core }
            }
            """);

        Assert.Equal([new PlanMapEdge("shield", "core")], plan.Map.Edges);
    }

    [Fact]
    public void What_lies_in_a_part_that_is_on_the_bench_is_hidden_by_nothing()
    {
        var plan = PlanOf.Text(Rig + """
            procedure p "P" on rig {
              goal remove core
              stage "Core" { undo shield_bolt  remove shield  undo body_bolt  remove body  undo core_bolt  remove core }
            }
            """);

        Assert.Equal([new PlanMapEdge("shield", "body")], plan.Map.Edges);
    }

    [Fact]
    public void What_a_part_needs_out_to_go_aside_hides_it_where_it_goes_aside()
    {
        var plan = PlanOf.Text(Rig + """
            procedure p "P" on rig {
              goal aside arm
              stage "Arm" { undo hood_bolt  remove hood  undo arm_bolt  aside arm }
            }
            """);

        Assert.Equal([new PlanMapEdge("hood", "arm")], plan.Map.Edges);
    }
}
