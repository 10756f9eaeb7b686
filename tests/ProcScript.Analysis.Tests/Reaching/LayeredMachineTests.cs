using System.Globalization;
using System.Text;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Reaching;
using ProcScript.Model;
using ProcScript.Model.Sources;

namespace ProcScript.Analysis.Tests.Reaching;

/// <summary>Machines of many layers, of which each part lets either of two below it give way.</summary>
public sealed class LayeredMachineTests
{
    private const int Layers = 40;
    private const int Width = 4;
    private const double Rounding = 1e-6;

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void The_cheapest_of_all_ways_through_many_layers_is_found_and_proved(int seed)
    {
        var (text, below) = Machine(new Random(seed));
        var library = LibraryBinder.Bind(MemorySourceStore.Of("x.proc", text), TestContext.Current.CancellationToken);
        Assert.Empty(library.Findings.Select(finding => $"{finding.Rule.Code} {finding.Message}"));
        var machine = Assert.Single(library.Machines);
        var costs = new ReachCosts(new MachineFacts(machine), (_, _) => Model.Procedures.ActionDetails.None, ReachWeights.TimeAlone, []);

        var report = LibraryReach.Find(library, CheckSettings.Usual, new ReachRequest([Name(Layers - 1, 0)], ReachPurpose.Remove));

        // Layer by layer, since nothing is needed twice.
        var least = new double[Layers, Width];
        for (var layer = 0; layer < Layers; layer++)
        {
            for (var place = 0; place < Width; place++)
            {
                var part = machine.Parts.Single(one => one.Name == Name(layer, place));
                var own = costs.Of(new FreeingGoal(FreeingKind.Out, part))
                    + machine.Joints.Where(joint => joint.Owner == part).Sum(joint => costs.Of(new FreeingGoal(FreeingKind.Off, joint)));
                least[layer, place] = own + (layer == 0 ? 0 : below[layer, place].Min(other => least[layer - 1, other]));
            }
        }

        Assert.Equal(least[Layers - 1, 0], report.Cost, Rounding);
        Assert.True(report.IsCheapest, $"{report.Bound} to {report.Cost}");
        Assert.NotEmpty(report.OtherWays);
    }

    private static string Name(int layer, int place) => string.Create(CultureInfo.InvariantCulture, $"p{layer}_{place}");

    private static (string Text, int[,][] Below) Machine(Random random)
    {
        var below = new int[Layers, Width][];
        var text = new StringBuilder("tool key \"key\"\nfastener bolt \"bolt\" { drive key  time 10 s }\nmachine rig \"Rig\" {\n");
        for (var layer = 0; layer < Layers; layer++)
        {
            for (var place = 0; place < Width; place++)
            {
                int[] either = [.. Enumerable.Range(0, Width).OrderBy(_ => random.Next()).Take(2)];
                below[layer, place] = either;
                var needs = layer == 0 ? "" : $" needs {Name(layer - 1, either[0])} out or {Name(layer - 1, either[1])} out";
                text.Append(CultureInfo.InvariantCulture, $"part {Name(layer, place)} \"part {layer} {place}\" {{{needs}\n");
                for (var joint = 0; joint < 3; joint++)
                {
                    text.Append(CultureInfo.InvariantCulture, $"held by {random.Next(1, 5)} bolt as b{layer}_{place}_{joint} {{ at \"place {joint}\" }}\n");
                }

                text.Append("}\n");
            }
        }

        return (text.Append("}\n").ToString(), below);
    }
}
