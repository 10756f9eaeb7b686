using ProcScript.Analysis.Bolts;
using ProcScript.Model.Catalog;

namespace ProcScript.Analysis.Bags;

/// <summary>
/// The holes that pieces of hardware could be put to. Pieces whose threads fit, or nearly fit, share one; so do those that are linked through a
/// third, which costs at most a bag and keeps the least count of <see cref="BagColouring"/> true of the groups.
/// </summary>
internal sealed class HoleGroups
{
    private readonly Dictionary<string, string> _groupOf = new(StringComparer.Ordinal);

    /// <summary>Groups what lies together.</summary>
    public HoleGroups(IEnumerable<Kind> kinds)
    {
        var holes = new List<(string Hole, ThreadDesignation? Thread)>();
        foreach (var kind in kinds)
        {
            if (HardwareSort.Hole(kind) is { } hole && _groupOf.TryAdd(hole, hole))
            {
                var thread = HardwareSort.Thread(kind);
                foreach (var other in holes.Where(other => HardwareSort.FitAlike(hole, thread, other.Hole, other.Thread)))
                {
                    Join(_groupOf[other.Hole], _groupOf[hole]);
                }

                holes.Add((hole, thread));
            }
        }
    }

    /// <summary>The group of a piece; null where nothing is known to fit the same.</summary>
    public string? Of(Kind kind) => HardwareSort.Hole(kind) is { } hole ? _groupOf[hole] : null;

    private void Join(string into, string from)
    {
        foreach (var hole in _groupOf.Where(one => one.Value == from).Select(one => one.Key).ToList())
        {
            _groupOf[hole] = into;
        }
    }
}
