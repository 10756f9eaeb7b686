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
        var properties = Sample.Parse(Sample.Catalog).Root.DescendantsAndSelf().OfType<QuantityPropertySyntax>();
        var torque = properties.First(property => property.Keyword.Text == "torque");

        Assert.Equal(22, torque.Quantity.First.Value);
        Assert.Equal(QuantityForm.PlusMinus, torque.Quantity.Form);
        Assert.Equal(2, torque.Quantity.Second?.Value);
        Assert.Equal("N.m", torque.Quantity.SecondUnit?.Text);
    }
}
