namespace ProcScript.Analysis.Tests.Plans;

/// <summary>What a <c>strip</c> says of the steps that it puts in: what the procedures in sight say of the same actions.</summary>
public sealed class GivenDetailsTests
{
    private const string Machine = """
        tool key "key"
        tool extension "extension"
        fastener bolt "bolt" { drive key }
        machine rig "Rig" {
          part lid "lid" { mass 12 kg  held by 4 bolt as lid_bolts }
          part fan "fan" { behind lid  held by 2 bolt as fan_bolts }
        }
        procedure strips "S" on rig { stage "Fan" { strip fan { store "On the bench" } } }

        """;

    private const string First = """
        procedure first "F" on rig {
          stage "Lid" {
            caution "The rim cuts."
            undo lid_bolts { tool extension  how "Rear pair first."  bag "lid"  refit { how "Front pair first."  check "Flush." } }
            remove lid { people 2  photo "The foam"  store "Wall" }
          }
        }

        """;

    private const string Second = """
        procedure second "Z" on rig {
          stage "Lid" {
            undo lid_bolts { how "Rear pair first." }
            remove lid { people 3  ppe "gloves"  store "Floor" }
          }
          stage "Fan" { undo fan_bolts  remove fan { hoist  store "Box" } }
        }

        """;

    [Theory]
    [InlineData(First + Second)]
    [InlineData(Second + First)]
    public void What_they_agree_on_is_said_and_else_what_is_safe(string others)
    {
        var plan = PlanOf.Text(Machine + others);
        var undo = plan.Strip[0].Steps[0];
        var remove = plan.Strip[0].Steps[1];
        var fan = plan.Strip[0].Steps[3];
        var fasten = plan.Refit[^1].Steps[^1];

        Assert.Equal(["Rear pair first."], undo.How);
        Assert.Equal(["The rim cuts."], undo.Alerts.Select(alert => alert.Text));
        Assert.Contains("extension", undo.Tools);
        Assert.Equal(3, remove.People);
        Assert.Equal(["gloves"], remove.Ppe);
        Assert.Equal(["The foam"], remove.Photos);
        Assert.Equal("", remove.Store);
        Assert.Equal("On the bench", fan.Store);
        Assert.True(fan.Hoist);
        Assert.Equal(["Front pair first."], fasten.How);
        Assert.Equal(["Flush."], fasten.Checks);
        Assert.Equal(["The rim cuts."], fasten.Alerts.Select(alert => alert.Text));
        Assert.Equal(3, plan.Step("Fit the lid").People);
    }

    [Fact]
    public void What_nobody_says_is_not_said()
    {
        var plan = PlanOf.Text(Machine);

        Assert.All(plan.Strip[0].Steps[..^1], step => Assert.True(step is { How.IsEmpty: true, Alerts.IsEmpty: true, People: 1, Store: "" }));
    }

    [Fact]
    public void A_procedure_that_is_not_in_sight_has_no_say()
    {
        var machine = Machine[..Machine.IndexOf("procedure", StringComparison.Ordinal)];
        var strips = "use \"machine.proc\"\n" + Machine[Machine.IndexOf("procedure", StringComparison.Ordinal)..];
        var check = Checked.Files(("machine.proc", machine), ("a.proc", strips), ("b.proc", "use \"machine.proc\"\n" + First));
        var seen = Checked.Files(("machine.proc", machine), ("a.proc", "use \"b.proc\"\n" + strips), ("b.proc", "use \"machine.proc\"\n" + First));

        Assert.Empty(check.Procedure("strips").CreatePlan()!.Strip[0].Steps[0].How);
        Assert.Equal(["Rear pair first."], seen.Procedure("strips").CreatePlan()!.Strip[0].Steps[0].How);
    }
}
