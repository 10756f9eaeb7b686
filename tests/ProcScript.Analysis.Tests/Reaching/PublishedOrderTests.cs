using ProcScript.Analysis.Reaching;
using ProcScript.Model;
using ProcScript.Model.Sources;

namespace ProcScript.Analysis.Tests.Reaching;

/// <summary>An order that a manual prints for getting at a buried part, beside what <c>reach</c> finds.</summary>
public sealed class PublishedOrderTests
{
    /// <summary>
    /// A gear pump on a blower; its name and the names of its parts are made up, and what holds what is taken from the order. The cover is within reach only
    /// on the bench. What else is in it has to do with nothing that is asked for.
    /// </summary>
    private const string Pump = """
        tool key "key"
        fastener bolt "bolt" { drive key }
        fastener screw_plug "screw plug" { drive key }
        machine feed_rig "Feed rig" {
          part blower "blower" { held by 6 bolt as blower_bolts }
          part pump "gear pump" {
            held by 3 bolt as pump_bolts { to blower }
            part relief "relief valve" { held by 1 screw_plug as relief_plug  way needs pump out }
            part cover "pump cover" { held by 8 bolt as cover_bolts { needs pump out } }
            part driven "driven gear" { way behind cover }
            part drive "drive assembly" {
              way behind cover
              part ball "locking ball" { way needs drive out }
              part shaft "drive shaft" { way needs drive out  way behind ball }
            }
          }
        }
        """;

    /// <summary>
    /// The order of removal in U.S. Army TM 5-3810-300-24&amp;P-3, section 2.2, "Fuel Pump", as one page of it prints it: three
    /// bolts and the pump off the blower, eight bolts and the cover off the body, the drive assembly out of the body, the ball out of it, the shaft out of
    /// the gear. The lines come off before that, on a page that was not at hand, and are left out here.
    /// </summary>
    [Fact]
    public void The_shaft_of_a_gear_pump_is_reached_in_the_order_that_a_manual_prints()
    {
        var library = LibraryBinder.Bind(MemorySourceStore.Of("x.proc", Pump), TestContext.Current.CancellationToken);
        Assert.Empty(library.Findings.Select(finding => $"{finding.Rule.Code} {finding.Message}"));

        var report = LibraryReach.Find(library, CheckSettings.Usual, new ReachRequest(["shaft"], ReachPurpose.Remove));

        Assert.Equal(
            ["undo pump_bolts", "remove pump", "undo cover_bolts", "remove cover", "remove drive", "remove ball", "remove shaft"],
            report.Actions.Select(action => $"{action.Verb} {action.Item}"));
        Assert.True(report.IsCheapest);
    }
}
