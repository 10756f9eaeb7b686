using System.Globalization;
using System.Text;
using ProcScript.Analysis.Reaching;
using ProcScript.Model;
using ProcScript.Model.Sources;

namespace ProcScript.Analysis.Tests.Reaching;

/// <summary>A machine of 2,000 parts and 10,000 joints, in layers, with two ways to every second part.</summary>
public sealed class LargeMachineTests
{
    private const int Parts = 2_000;
    private const int Layers = 40;
    private const int JointsOfPart = 5;

    private static readonly Library Library = LibraryBinder.Bind(MemorySourceStore.Of("x.proc", Text()), TestContext.Current.CancellationToken);

    [Theory]
    [InlineData(1_000)]
    [InlineData(Parts - 1)]
    public void What_lies_deep_is_reached_with_a_proof_or_a_stated_gap(int part)
    {
        var machine = Assert.Single(Library.Machines);
        Assert.Equal((Parts, Parts * JointsOfPart), (machine.Parts.Length, machine.Joints.Length));

        var report = LibraryReach.Find(Library, CheckSettings.Usual, new ReachRequest([Name(part)], ReachPurpose.Remove));

        Assert.InRange(report.Bound, 1, report.Cost);
        Assert.Equal(report.IsCheapest, report.Bound >= report.Cost - 1e-6);
        Assert.True(report.Cost - report.Bound <= report.Cost / 10, $"{report.Cost} s may be {report.Cost - report.Bound} s too many");
        Assert.Equal(("remove", Name(part)), (report.Actions[^1].Verb, report.Actions[^1].Item));
        TestContext.Current.SendDiagnosticMessage($"{report.Actions.Length} actions, {report.Cost} s, at the least {report.Bound} s, {report.Looked} choices");
    }

    [Fact]
    public void Its_map_has_every_part_once()
    {
        var map = MachineMap.Of(Library, null, null, null, 0);

        Assert.Equal(Parts, map.Parts.Select(part => part.Name).Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(Layers, map.Parts.Select(part => part.Layer).Distinct().Count());
    }

    private static string Name(int part) => string.Create(CultureInfo.InvariantCulture, $"p{part}");

    private static string Text()
    {
        const int Wide = Parts / Layers;
        Random random = new(14);
        StringBuilder text = new("clip pin \"pin\"\nfastener m8 \"M8 bolt\" { thread M8x1.25  grade unknown  torque 20 ± 2 N.m }\nmachine big \"big machine\" {\n");
        for (var part = 0; part < Parts; part++)
        {
            var above = (part / Wide * Wide) - Wide;
            string Above() => Name(above + random.Next(Wide));
            var needs = above < 0 ? "" : part % 2 == 0 ? $"behind {Above()}" : $"needs {Above()} out or {Above()} out";
            text.Append(CultureInfo.InvariantCulture, $"  part {Name(part)} \"part {part}\" {{ {needs}");
            for (var joint = 0; joint < JointsOfPart; joint++)
            {
                text.Append(CultureInfo.InvariantCulture, $"  held by {random.Next(1, 9)} {(joint % 2 == 0 ? "m8" : "pin")} as j{part}_{joint}");
            }

            text.Append(" }\n");
        }

        return text.Append("}\n").ToString();
    }
}
