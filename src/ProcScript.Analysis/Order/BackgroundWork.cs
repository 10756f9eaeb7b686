using System.Collections.Immutable;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Order;

/// <summary>
/// What still goes on in the background, and who has to wait for it: whoever needs its effect, whoever would spoil what it needs,
/// and whoever touches what is being worked on. Each is waited for once: what comes after the first to wait comes after the end.
/// </summary>
internal sealed class BackgroundWork
{
    private readonly HashSet<int> _running;
    private readonly Dictionary<MachineItem, int> _workedOn;

    /// <summary>Nothing goes on.</summary>
    public BackgroundWork()
        : this([], [])
    {
    }

    private BackgroundWork(HashSet<int> running, Dictionary<MachineItem, int> workedOn)
    {
        _running = running;
        _workedOn = workedOn;
    }

    /// <summary>The same, to go on with separately.</summary>
    public BackgroundWork Copy() => new([.. _running], new Dictionary<MachineItem, int>(_workedOn));

    /// <summary>Whether nothing goes on.</summary>
    public bool IsIdle => _running.Count == 0;

    /// <summary>The actions that must end before an action starts.</summary>
    /// <param name="target">What the action is done to.</param>
    /// <param name="before">The actions that must go before it for its needs and theirs.</param>
    public ImmutableArray<int> WaitFor(MachineItem? target, IEnumerable<int> before)
    {
        var ended = new SortedSet<int>(before.Where(_running.Contains));
        foreach (var item in Touched(target))
        {
            if (_workedOn.Remove(item, out var work))
            {
                ended.Add(work);
            }
        }

        _running.ExceptWith(ended);
        return [.. ended];
    }

    /// <summary>Whether work on what <paramref name="target"/> touches goes on, and which.</summary>
    public IEnumerable<int> WorkOn(MachineItem? target) =>
        Touched(target).Where(_workedOn.ContainsKey).Select(item => _workedOn[item]);

    /// <summary>An action goes on in the background from here.</summary>
    public void Start(int action, Verb verb, MachineItem? target)
    {
        _running.Add(action);
        if (target is not null && verb != Verb.Empty)
        {
            _workedOn[target] = action;
        }
    }

    /// <summary>The item, and the parts that it lies in or joins.</summary>
    private static IEnumerable<MachineItem> Touched(MachineItem? target)
    {
        if (target is not (null or Part))
        {
            yield return target;
        }

        foreach (var innermost in target is Joint joint ? [joint.Owner, joint.Other] : new[] { target as Part })
        {
            for (var part = innermost; part is not null; part = part.Parent)
            {
                yield return part;
            }
        }
    }
}
