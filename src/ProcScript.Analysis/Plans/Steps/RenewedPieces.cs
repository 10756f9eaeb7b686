using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Analysis.Totals;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Plans.Steps;

/// <summary>
/// Of joints that are replaced in part: which steps take off the pieces that never go back. Nobody can say which pieces these are, so
/// that the first to come off stand for them; their inverses put the new ones on.
/// </summary>
internal static class RenewedPieces
{
    /// <summary>How many, by the numbers of the actions of a strip.</summary>
    public static Dictionary<int, int> ByAction(StripRun strip)
    {
        var renewed = new Dictionary<int, int>();
        if (strip.Renewed.Count == 0)
        {
            return renewed;
        }

        var left = strip.Renewed
            .Where(one => !strip.Discarded.Contains(one.Key) && !OrderList.IsScrap(Fate.GoesBack, one.Key))
            .ToDictionary();
        foreach (var action in strip.Actions)
        {
            if (action is { Target: Joint joint, Changes: [{ Variable.Kind: StateKind.Attached } change, ..] } && change.After < change.Before
                && left.TryGetValue(joint, out var pieces) && pieces > 0)
            {
                renewed.Add(action.Number, Math.Min(pieces, action.Count));
                left[joint] = pieces - renewed[action.Number];
            }
        }

        return renewed;
    }
}
