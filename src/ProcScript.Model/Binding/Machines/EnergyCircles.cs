using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Machines;
using ProcScript.Model.Rules.Machines;

namespace ProcScript.Model.Binding.Machines;

/// <summary>Finds energies that are isolated after each other.</summary>
internal static class EnergyCircles
{
    /// <summary>
    /// Reports one circle of each knot. An energy that waits for none, or only for such as are done, is done; from what is left every
    /// way leads into a circle.
    /// </summary>
    public static void Report(ImmutableArray<Energy> energies, FindingSink sink)
    {
        var waitsFor = energies.ToDictionary(energy => energy, energy => energy.After.Distinct().Count());
        var waiting = energies.SelectMany(energy => energy.After.Distinct().Select(first => (first, energy)))
            .ToLookup(pair => pair.first, pair => pair.energy);
        var done = new Queue<Energy>(energies.Where(energy => waitsFor[energy] == 0));
        foreach (var energy in energies)
        {
            Finish(done, waiting, waitsFor);
            if (waitsFor[energy] > 0)
            {
                var circle = CircleFrom(energy, waitsFor);
                sink.Report(AfterItself.At([.. circle.OrderBy(one => one.Index)]));
                circle.ForEach(one => waitsFor[one] = 0);
                circle.ForEach(done.Enqueue);
            }
        }
    }

    private static void Finish(Queue<Energy> done, ILookup<Energy, Energy> waiting, Dictionary<Energy, int> waitsFor)
    {
        while (done.TryDequeue(out var first))
        {
            foreach (var energy in waiting[first])
            {
                if (waitsFor[energy] > 0 && --waitsFor[energy] == 0)
                {
                    done.Enqueue(energy);
                }
            }
        }
    }

    private static List<Energy> CircleFrom(Energy energy, Dictionary<Energy, int> waitsFor)
    {
        var way = new List<Energy>();
        var placeOf = new Dictionary<Energy, int>();
        while (placeOf.TryAdd(energy, way.Count))
        {
            way.Add(energy);
            energy = energy.After.First(one => waitsFor[one] > 0);
        }

        return way[placeOf[energy]..];
    }
}
