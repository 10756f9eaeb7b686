using ProcScript.Analysis.Machines;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Order;

/// <summary>
/// What still cures, and who has to wait for it because it would load it: whoever needs the joint closed (its cover, the energy and the
/// fluid on it) or comes after it by an author's rule, and whoever takes away the support of a part that it holds. More pieces of the
/// same joint may go on meanwhile. Each is waited for once: what comes after the first to wait comes after the end.
/// </summary>
internal sealed class CuringWork
{
    private readonly Dictionary<int, MachineItem?> _curing = [];
    private readonly Dictionary<MachineItem, List<int>> _piecesOf = [];
    private readonly Dictionary<Part, List<int>> _holding = [];

    /// <summary>Whether nothing cures.</summary>
    public bool IsIdle => _curing.Count == 0;

    /// <summary>An action has put in place what cures from now on.</summary>
    public void Start(int action, MachineItem? target)
    {
        _curing.Add(action, target);
        if (target is Joint joint)
        {
            Add(_piecesOf, joint, action);
            foreach (var part in Assemblies.BelowTheCommonPart(joint))
            {
                Add(_holding, part, action);
            }
        }
    }

    /// <summary>The actions whose work must have cured before an action starts.</summary>
    /// <param name="verb">What is done.</param>
    /// <param name="target">What it is done to.</param>
    /// <param name="before">The actions that meet its needs, and those that rules put before it.</param>
    public List<int> WaitFor(Verb verb, MachineItem? target, List<int> before)
    {
        List<int> ended = [];
        foreach (var action in before)
        {
            if (_curing.TryGetValue(action, out var cured) && (cured is null || cured != target))
            {
                ended.AddRange(cured is not null && _piecesOf.TryGetValue(cured, out var pieces) ? pieces.FindAll(_curing.Remove) : [action]);
                _curing.Remove(action);
            }
        }

        if (verb == Verb.Unsupport && target is Part part && _holding.Remove(part, out var held))
        {
            ended.AddRange(held.FindAll(_curing.Remove));
        }

        return ended;
    }

    private static void Add<TItem>(Dictionary<TItem, List<int>> actions, TItem item, int action)
        where TItem : MachineItem
    {
        if (!actions.TryGetValue(item, out var known))
        {
            actions.Add(item, known = []);
        }

        known.Add(action);
    }
}
