using ProcScript.Analysis.Rules;
using ProcScript.Analysis.Rules.Workshop;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Tests.Rules;

public class WorkshopRuleTests
{
    public static TheoryData<OutcomeRule> All => [new TorqueMissing(), new NoTool()];

    [Theory]
    [MemberData(nameof(All))]
    public void The_sample_of_the_page_fires_and_the_mended_one_does_not(OutcomeRule rule)
    {
        Assert.Equal([rule.Info.Code], Check(rule.Page.Wrong).Select(finding => finding.Rule.Code));
        Assert.Empty(Check(rule.Page.Right));
    }

    [Fact]
    public void A_joint_undone_in_two_goes_by_two_procedures_is_reported_once()
    {
        var findings = Check("""
            fastener stud "M8 stud" { thread M8x1.25 }
            machine rig "Rig" { part lid "lid" { held by 4 stud as lid_studs } }
            procedure a "A" on rig { stage "Lid" { undo 1 of lid_studs  undo rest of lid_studs  remove lid } }
            procedure b "B" on rig { stage "Lid" { loosen lid_studs } }
            """);

        Assert.Equal(
            [
                "PRC5001: `lid_studs` is tightened without a torque: 4 × M8 stud",
                "PRC5002: `lid_studs` comes off without a tool: 4 × M8 stud",
            ],
            findings.Select(finding => $"{finding.Rule.Code}: {finding.Message}"));
    }

    private static IEnumerable<Finding> Check(string text) =>
        LibraryCheck.Run(MemorySourceStore.Of("x.proc", text)).Findings.Select(finding => finding.Finding);
}
