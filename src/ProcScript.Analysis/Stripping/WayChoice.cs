using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Needs;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Stripping;

/// <summary>Which ways of choices a plan has taken and which it must not take again, and which of its actions wait for which.</summary>
internal sealed class WayChoice
{
    /// <summary>How many plans are made again without a way. Each is one more way that came to nothing.</summary>
    private const int MostAttempts = 8;

    /// <summary>How many ways are tried for their time, choices within choices among them; after that the first way will do.</summary>
    private const int MostTrials = 2_000;

    private readonly HashSet<Need> _ruledOut;
    private readonly Dictionary<PlanKey, ImmutableArray<PlanKey>> _parents;
    private readonly Counter _trials;
    private Need? _last;
    private int _attempts;

    /// <summary>Nothing chosen, nothing ruled out.</summary>
    public WayChoice()
        : this([], [], new Counter())
    {
    }

    private WayChoice(HashSet<Need> ruledOut, Dictionary<PlanKey, ImmutableArray<PlanKey>> parents, Counter trials) =>
        (_ruledOut, _parents, _trials) = (ruledOut, parents, trials);

    /// <summary>The same for a trial, which chooses for itself.</summary>
    public WayChoice Copy() => new(_ruledOut, new Dictionary<PlanKey, ImmutableArray<PlanKey>>(_parents), _trials);

    /// <summary>Takes note that an action waits for another.</summary>
    public void Link(PlanKey waiting, PlanKey awaited) =>
        _parents[awaited] = _parents.TryGetValue(awaited, out var others) ? others.Add(waiting) : [waiting];

    /// <summary>The action itself and all that wait for it.</summary>
    public HashSet<PlanKey> WaitingFor(PlanKey action)
    {
        var waiting = new HashSet<PlanKey> { action };
        var open = new Stack<PlanKey>(waiting);
        while (open.TryPop(out var next))
        {
            foreach (var parent in _parents.TryGetValue(next, out var parents) ? parents : [])
            {
                if (waiting.Add(parent))
                {
                    open.Push(parent);
                }
            }
        }

        return waiting;
    }

    /// <summary>Takes note of a way that is taken.</summary>
    public void Note(Need way) => _last = way;

    /// <summary>Whether a way has come to nothing.</summary>
    public bool IsRuledOut(Need way) => _ruledOut.Contains(way);

    /// <summary>Whether the time of one more way may be looked for.</summary>
    public bool MayTry() => _trials.Count++ < MostTrials;

    /// <summary>The plan came to nothing: rules out the way that was taken last. False where there was none, or it has been tried often enough.</summary>
    public bool RuleOutTheLast()
    {
        if (_last is null || ++_attempts > MostAttempts)
        {
            return false;
        }

        _ruledOut.Add(_last);
        _last = null;
        _parents.Clear();
        return true;
    }

    private sealed class Counter
    {
        public int Count { get; set; }
    }
}

/// <summary>An action of a plan, which has each but once.</summary>
/// <param name="Verb">The verb.</param>
/// <param name="Target">The target.</param>
/// <param name="Position">The position of a control; 0 for all else.</param>
internal readonly record struct PlanKey(Verb Verb, MachineItem? Target, int Position)
{
    /// <summary>The key of an action.</summary>
    public static PlanKey Of(ActionRequest request) => new(request.Verb, request.Target, request.Target is Control ? request.Value : 0);
}
