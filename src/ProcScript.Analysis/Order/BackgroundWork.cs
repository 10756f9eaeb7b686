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
    public List<int> WaitFor(MachineItem? target, List<int> before)
    {
        List<int> ended = before.FindAll(_running.Remove);
        foreach (var item in Touched(target))
        {
            if (_workedOn.Remove(item, out var work) && !ended.Contains(work))
            {
                _running.Remove(work);
                ended.Add(work);
            }
        }

        return ended;
    }

    /// <summary>Whether work on what <paramref name="target"/> touches goes on, and which.</summary>
    public IEnumerable<int> WorkOn(MachineItem? target)
    {
        foreach (var item in Touched(target))
        {
            if (_workedOn.TryGetValue(item, out var work))
            {
                yield return work;
            }
        }
    }

    /// <summary>An action goes on in the background from here.</summary>
    public void Start(int action, Verb verb, MachineItem? target)
    {
        _running.Add(action);
        if (target is not null && verb != Verb.Empty)
        {
            _workedOn[target] = action;
        }
    }

    /// <summary>The item, and the parts that it lies in or joins; nothing where nothing is worked on.</summary>
    private IEnumerable<MachineItem> Touched(MachineItem? target) => _workedOn.Count == 0 ? [] : target switch
    {
        null => [],
        Part part => Around(part),
        Joint joint => [joint, .. Around(joint.Owner), .. Around(joint.Other)],
        _ => [target],
    };

    private static IEnumerable<Part> Around(Part? innermost)
    {
        for (var part = innermost; part is not null; part = part.Parent)
        {
            yield return part;
        }
    }
}
