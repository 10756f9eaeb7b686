using ProcScript.Analysis.Plans;

namespace ProcScript.Analysis.Tests.Plans;

/// <summary>A second person signs where the author says so, and nowhere else.</summary>
public class SignedTests
{
    private static readonly Plan Job = PlanOf.Text("""
        fastener m6 "M6 bolt" { torque 9 N.m }
        machine rig "Rig" {
          energy mains "mains" { isolate "Off."  lock "Lock it."  verify "Dark."  restore "On." }
          part lid "lid" { held by 4 m6 as lid_bolts }
          part pump "pump" { behind lid  held by 2 m6 as pump_bolts { signed } }
        }
        procedure p "P" on rig {
          goal remove pump
          stage "Lid" {
            isolate mains { signed }
            undo lid_bolts { refit { signed } }
            remove lid
            undo pump_bolts
            remove pump
          }
          work { measure "Gap" expect <= 1 mm { signed }  task "Wipe it." }
          refit {
            snug pump_bolts
            check "It runs." needs mains live { signed }
          }
        }
        """);

    [Fact]
    public void It_holds_at_the_action_at_its_inverse_and_where_a_joint_gets_its_torque() => Assert.Equal(
        ["isolate", "measure", "tighten", "fasten", "check"],
        Job.AllSteps().Where(step => step.Signed).Select(step => step.Verb));

    [Fact]
    public void A_joint_that_is_only_finger_tight_is_not_signed_for_yet() =>
        Assert.False(Job.AllSteps().Single(step => step.Verb == "snug").Signed);
}
