namespace ProcScript.Analysis.Tests.Refitting;

/// <summary>When what goes in finger-tight gets its torque.</summary>
public sealed class SnugTests
{
    private const string Lid = """
        part lid "lid" {
          held by 2 bolt as front_bolts { torque 5 N.m  at "front" }
          held by 2 bolt as rear_bolts { torque 5 N.m  at "rear" }
        }
        """;

    [Fact]
    public void It_waits_until_all_that_holds_the_part_is_in() => Assert.Equal(
        ["fit lid", "snug front_bolts", "fasten rear_bolts", "tighten front_bolts"],
        Checked.Stage(Lid, "undo rear_bolts undo front_bolts remove lid", "refit { snug front_bolts }").Refit);

    [Fact]
    public void It_waits_until_all_that_the_rule_names_is_in_whatever_another_rule_says()
    {
        var found = Checked.Stage(
            Lid,
            "undo rear_bolts undo front_bolts remove lid",
            "refit { snug front_bolts, rear_bolts  tighten front_bolts before snug rear_bolts }").OnlyFinding;

        Assert.Equal("PRC4003", found.Rule.Code);
    }

    [Fact]
    public void Only_what_went_in_finger_tight_gets_it() => Assert.Equal(
        ["return lid", "tighten 1 of front_bolts", "snug 1 of front_bolts", "tighten 1 of front_bolts"],
        Checked.Stage(
            """part lid "lid" { held by 2 bolt as front_bolts { torque 5 N.m }  aside "Tilt it." needs front_bolts }""",
            "undo 1 of front_bolts loosen front_bolts aside lid",
            "refit { snug front_bolts }").Refit);
}
