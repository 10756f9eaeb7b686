using ProcScript.Syntax.Nodes;

namespace ProcScript.Syntax.Tests;

public sealed class ParseTests
{
    public static TheoryData<string> Good => [Sample.Catalog, Sample.Cab, Sample.Evaporator];

    [Theory]
    [MemberData(nameof(Good))]
    public void A_good_file_has_no_finding(string content) => Assert.Empty(Sample.Parse(content).Findings);

    [Fact]
    public void A_machine_holds_its_members_in_order()
    {
        var machine = Assert.IsType<MachineSyntax>(Assert.Single(Sample.Parse(Sample.Cab).Root.Declarations));

        Assert.Equal("ketterby_t40", machine.Name.Text);
        Assert.Equal("Ketterby T40 tractor, cab", machine.Title?.Value);
        Assert.Equal(
            [
                typeof(OptionSyntax), typeof(EnergySyntax), typeof(FluidSyntax), typeof(ControlSyntax), typeof(PartSyntax),
                typeof(PartSyntax), typeof(PartSyntax), typeof(EachSyntax), typeof(PartSyntax), typeof(PartSyntax),
            ],
            machine.Members.Select(member => member.GetType()));
    }

    [Fact]
    public void A_joint_keeps_its_inline_clauses_and_its_cover()
    {
        var joints = Sample.Parse(Sample.Cab).Root.DescendantsAndSelf().OfType<JointSyntax>();
        var joint = joints.Single(joint => joint.Name.Name.Text == "grab_bolt");

        var cover = Assert.IsType<CoverSyntax>(Assert.Single(joint.Clauses));
        Assert.Equal("grab_cap", cover.Name.Name.Text);
        Assert.Equal(1, cover.Count.Value);
    }

    [Fact]
    public void A_quantity_keeps_its_tolerance_and_unit()
    {
        var torque = Sample.Parse(Sample.Catalog).Root.DescendantsAndSelf().OfType<TorquePropertySyntax>().First().Stages.Single();

        Assert.Equal(22, torque.First.Value);
        Assert.Equal(QuantityForm.PlusMinus, torque.Form);
        Assert.Equal(2, torque.Second?.Value);
        Assert.Equal("N.m", torque.SecondUnit?.Text);
    }

    [Fact]
    public void A_torque_has_stages_and_then_angles()
    {
        var torque = Sample.Parse("fastener a { torque 20, 40 ± 3 N.m + 90° + 45 ° }").Only<TorquePropertySyntax>();

        Assert.Equal([20, 40], torque.Stages.Select(stage => stage.First.Value));
        Assert.Equal([90, 45], torque.Angles.Select(angle => angle.First.Value));
    }

    [Fact]
    public void Two_words_make_one_keyword_or_one_choice()
    {
        var tree = Sample.Parse("fastener a { thread  locker pattern inside  out } machine m { part p { renew  with q } }");

        Assert.Equal("thread locker", tree.Only<FlagPropertySyntax>().Keyword.Text);
        Assert.Equal("inside out", tree.Only<ChoicePropertySyntax>().Choice.Text);
        Assert.Equal("renew with", tree.Only<NamesPropertySyntax>().Keyword.Text);
    }

    [Fact]
    public void The_words_of_power_and_tests_are_names_too()
    {
        var tree = Sample.Parse("""
            tool test "t"
            machine ac {
              option while
              energy power "p" { voltage 12 V dc  tool test  verify "v" at open { behind voltage, test } }
              control open { open, ac, while }
              part voltage  part verify { held by 1 dc as test on power }
            }
            procedure test(open in ac, dc) on ac {
              stage "s" { verify power  undo test  set open to while  remove verify  when open is dc { remove voltage } }
              refit {
                fit verify before fit voltage
                test "t" before fit verify { power power, open  check "c"  while while, open open because "b" }
                restore power while open open because "b"
              }
            }
            """);

        Assert.Empty(tree.Findings);
        Assert.Equal(["power", "open"], tree.Only<PowerSyntax>().Energies.Select(energy => energy.Name.Text));
        Assert.Equal(
            ["while open", "open"],
            tree.Root.DescendantsAndSelf().OfType<WhileSyntax>().Select(open => string.Join(' ', open.Open.Select(item => item.Name.Text))));
        Assert.Equal("open", tree.Only<VerifyPropertySyntax>().Place!.Name.Text);
    }

    [Fact]
    public void What_a_new_part_changes_names_its_supply_only_where_it_is_another()
    {
        var tree = Sample.Parse("machine m { fluid oil { with pump add 2 mL with drier take 3 mL of pag } }");
        var changes = tree.Root.DescendantsAndSelf().OfType<ChangePropertySyntax>().ToList();

        Assert.Equal([("pump", "add", null), ("drier", "take", "pag")], changes.Select(change =>
            (change.Part.Name.Text, change.Direction.Text, change.Supply?.Name.Text)));
    }
}
