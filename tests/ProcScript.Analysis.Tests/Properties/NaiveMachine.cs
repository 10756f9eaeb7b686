using ProcScript.Analysis.States;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Tests.Properties;

/// <summary>
/// The rules of the language written down a second time, as plainly as they can be and without the action table: the judge of what
/// the analysis derives.
/// </summary>
internal sealed class NaiveMachine
{
    private readonly Machine _machine;
    private readonly IReadOnlySet<MachineItem> _discarded;
    private readonly Dictionary<MachineItem, int> _values = [];
    private readonly HashSet<Joint> _slack = [];
    private readonly HashSet<Part> _propped = [];
    private readonly HashSet<Part> _leftProp = [];
    private readonly Dictionary<MachineItem, int> _capped = [];

    public NaiveMachine(Machine machine, IReadOnlySet<MachineItem>? discarded = null)
    {
        _machine = machine;
        _discarded = discarded ?? new HashSet<MachineItem>();
        foreach (var joint in machine.Joints)
        {
            _values[joint] = IsTemporary(joint) ? 0 : joint.Count;
        }

        foreach (var on in machine.Energies.Concat<MachineItem>(machine.Fluids))
        {
            _values[on] = 1;
        }

        foreach (var rest in machine.Parts.Concat<MachineItem>(machine.Controls))
        {
            _values[rest] = rest is Part { IsTemporary: true } ? (int)PartPlace.Out : 0;
        }
    }

    private NaiveMachine(NaiveMachine other)
    {
        (_machine, _discarded) = (other._machine, other._discarded);
        (_values, _slack, _propped, _leftProp, _capped) =
            (new(other._values), [.. other._slack], [.. other._propped], [.. other._leftProp], new(other._capped));
    }

    public NaiveMachine Copy() => new(this);

    public int this[MachineItem item] => _values[item];

    public bool IsSlack(Joint joint) => _slack.Contains(joint);

    public bool IsPropped(Part part) => _propped.Contains(part);

    public PartPlace Place(Part part) => (PartPlace)_values[part];

    /// <summary>Whether both ends of a joint lie on one bench, where nothing of the machine reaches it.</summary>
    public bool IsOnBench(Joint joint) => joint.Other is { } other && AssemblyOf(joint.Owner) is { } bench && AssemblyOf(other) == bench;

    /// <summary>Everything that can be told of the machine, to compare two of them by.</summary>
    public string Describe() => string.Join(
        ' ',
        _values.Where(value => !_discarded.Contains(value.Key))
            .Select(value => $"{value.Key.Name}={value.Value}{(value.Key is Joint joint && _slack.Contains(joint) ? "~" : "")}"
                + (value.Key is Part part && _propped.Contains(part) ? "^" : "") + (CapsOn(value.Key) is > 0 and var caps ? $"!{caps}" : "")));

    public bool Can(Move move, bool refit, IEnumerable<Condition>? own = null) =>
        (own ?? []).Where(condition => Binds(condition, refit)).All(condition => condition.Each.Any(IsSo)) && IsOnItsWay(move, refit) && move switch
        {
            { Verb: Verb.Undo, Item: Joint joint } => Sort(joint) == KindCategory.Fastener && Opens(joint, move.Value, refit),
            { Verb: Verb.Release, Item: Joint joint } => Sort(joint) == KindCategory.Clip && Opens(joint, move.Value, refit),
            { Verb: Verb.Unplug, Item: Joint joint } => Sort(joint) == KindCategory.Connector && Opens(joint, move.Value, refit),
            { Verb: Verb.Disconnect, Item: Joint joint } => Sort(joint) == KindCategory.Line && Opens(joint, move.Value, refit),
            { Verb: Verb.Cut, Item: Joint joint } => Sort(joint) == KindCategory.Bond && Opens(joint, move.Value, refit),
            { Verb: Verb.Fasten or Verb.Snug or Verb.Engage or Verb.Plug or Verb.Connect or Verb.Renew, Item: Joint joint } => Closes(joint, move.Value, refit),
            { Verb: Verb.Loosen, Item: Joint joint } =>
                Sort(joint) == KindCategory.Fastener && joint.Role != JointRole.Cover && _values[joint] > 0 && !_slack.Contains(joint)
                && Reached(joint, refit) && Bare(joint) && Harmless(joint),
            { Verb: Verb.Tighten, Item: Joint joint } =>
                _values[joint] >= move.Value && _slack.Contains(joint) && Reached(joint, refit) && Bare(joint) && Together(joint) && Harmless(joint),
            { Verb: Verb.Aside, Item: Part part } =>
                part.Aside is not null && Place(part) == PartPlace.Fitted && Reached(part, refit) && GoesAside(part, refit),
            { Verb: Verb.Return, Item: Part part } => Place(part) == PartPlace.Aside && Reached(part, refit) && GoesAside(part, refit),
            { Verb: Verb.Remove, Item: Part part } =>
                Place(part) != PartPlace.Out && Reached(part, refit) && _machine.Joints.All(joint => !Ties(joint, part) || _values[joint] == 0),
            { Verb: Verb.Fit, Item: Part part } =>
                Place(part) == PartPlace.Out && CapsOn(part) == 0 && Reached(part, refit) && (!refit || !_leftProp.Contains(part) || _propped.Contains(part)),
            { Verb: Verb.Cap, Item: Joint joint } => CapsOn(joint) + move.Value <= joint.Count - _values[joint],
            { Verb: Verb.Cap, Item: Part part } => Place(part) == PartPlace.Out && CapsOn(part) == 0,
            { Verb: Verb.Uncap, Item: Joint joint } => CapsOn(joint) >= move.Value,
            { Verb: Verb.Uncap, Item: Part part } => CapsOn(part) == 1,
            { Verb: Verb.Set } => _values[move.Item] != move.Value && Reached(move.Item, refit),
            { Verb: Verb.Isolate } => _values[move.Item] == 1 && Reached(move.Item, refit),
            { Verb: Verb.Restore } => _values[move.Item] == 0 && Reached(move.Item, refit)
                && NaiveGuards.Of(_machine, move.Item).All(IsInPlaceAgain),
            { Verb: Verb.Empty } => _values[move.Item] == 1 && Reached(move.Item, refit),
            { Verb: Verb.Fill } => _values[move.Item] == 0 && Reached(move.Item, refit)
                && _machine.Joints.All(joint => joint.Carries != move.Item || _discarded.Contains(joint) || Whole(joint)),
            { Verb: Verb.Support, Item: Part part } => !_propped.Contains(part) && (refit || Place(part) != PartPlace.Out),
            { Verb: Verb.Unsupport, Item: Part part } => _propped.Contains(part) && Holding(part).All(Whole),
            _ => throw new InvalidOperationException($"{move}"),
        };

    /// <summary>What binds a part's own way out and back.</summary>
    private bool IsOnItsWay(Move move, bool refit) =>
        move is not { Verb: Verb.Aside or Verb.Return or Verb.Remove or Verb.Fit, Item: Part part }
        || part.WayOut.Where(condition => Binds(condition, refit)).All(condition => IsVoidOrSo(condition, AssemblyOf(part.Parent)));

    /// <summary>Of a choice any way will do; one that is void is in nobody's way.</summary>
    private bool IsVoidOrSo(Condition condition, Part? assembly) => condition.Each.Any(way => IsVoid(way, assembly) || IsSo(way));

    public void Do(Move move)
    {
        switch (move.Verb)
        {
            case Verb.Undo or Verb.Release or Verb.Unplug or Verb.Disconnect or Verb.Cut:
                _values[move.Item] -= move.Value;
                break;
            case Verb.Fasten or Verb.Engage or Verb.Plug or Verb.Connect or Verb.Renew:
                _values[move.Item] += move.Value;
                break;
            case Verb.Cap:
                _capped[move.Item] = CapsOn(move.Item) + (move.Item is Joint ? move.Value : 1);
                break;
            case Verb.Uncap:
                _capped[move.Item] = CapsOn(move.Item) - (move.Item is Joint ? move.Value : 1);
                break;
            case Verb.Snug:
                _values[move.Item] += move.Value;
                _slack.Add((Joint)move.Item);
                break;
            case Verb.Loosen:
                _slack.Add((Joint)move.Item);
                break;
            case Verb.Tighten:
                _slack.Remove((Joint)move.Item);
                break;
            case Verb.Aside:
                _values[move.Item] = (int)PartPlace.Aside;
                break;
            case Verb.Remove:
                _values[move.Item] = (int)PartPlace.Out;
                if (_propped.Remove((Part)move.Item))
                {
                    _leftProp.Add((Part)move.Item);
                }

                break;
            case Verb.Fit or Verb.Return or Verb.Set:
                _values[move.Item] = move.Value;
                if (move is { Verb: Verb.Fit, Item: Part { IsTemporary: true } })
                {
                    _leftProp.Remove((Part)move.Item);
                }

                break;
            case Verb.Isolate or Verb.Empty:
                _values[move.Item] = 0;
                break;
            case Verb.Restore or Verb.Fill:
                _values[move.Item] = 1;
                break;
            case Verb.Support:
                _propped.Add((Part)move.Item);
                break;
            case Verb.Unsupport:
                _propped.Remove((Part)move.Item);
                break;
        }
    }

    private int CapsOn(MachineItem item) => _capped.GetValueOrDefault(item);

    /// <summary>Whether a joint is there for the job alone: it, or the joint that it covers, ties what is temporary to something that is not in it.</summary>
    private bool IsTemporary(Joint joint) => joint.Over is { } hidden
        ? IsTemporary(hidden)
        : _machine.Parts.Any(part => part.IsTemporary && Ties(joint, part));

    private static KindCategory Sort(Joint joint) => joint.Kind.Category;

    private static bool Binds(Condition condition, bool refit) =>
        condition.Phase == NeedsPhase.Both || condition.Phase == (refit ? NeedsPhase.Refit : NeedsPhase.Strip);

    /// <summary>Whether something that guards an energy, or is exposed by it, is as it was: a part in its place and held, a joint whole.</summary>
    private bool IsInPlaceAgain(MachineItem item) => _discarded.Contains(item) || (item switch
    {
        Part { IsTemporary: true } part => Place(part) == PartPlace.Out,
        Part part => Place(part) == PartPlace.Fitted && Holding(part).All(Whole),
        _ => Whole((Joint)item),
    });

    private IEnumerable<Joint> Holding(Part part) => _machine.Joints.Where(joint =>
        joint.Role == JointRole.Held && Ties(joint, part) && !IsTemporary(joint) && !_discarded.Contains(joint));

    /// <summary>As it was at the start: complete and tight, or off where it is there for the job alone.</summary>
    private bool Whole(Joint joint) => IsTemporary(joint) ? _values[joint] == 0 : On(joint);

    private bool On(Joint joint) => _values[joint] == joint.Count && !_slack.Contains(joint);

    private bool Bare(Joint joint) => joint.Covers.All(cover => _values[cover] == 0);

    private bool Opens(Joint joint, int pieces, bool refit) =>
        _values[joint] >= pieces && Reached(joint, refit) && Bare(joint) && Harmless(joint);

    private bool Closes(Joint joint, int pieces, bool refit) =>
        _values[joint] + pieces <= joint.Count && (joint.Cap is null || CapsOn(joint) <= joint.Count - _values[joint] - pieces) && Reached(joint, refit) && Bare(joint) && Harmless(joint) && Together(joint)
        && (joint.Over is not { } hidden || _discarded.Contains(hidden) || On(hidden));

    private bool Harmless(Joint joint) =>
        (AssemblyOf(joint.Owner) is not null && joint.Other is not null && AssemblyOf(joint.Other) is not null)
        || ((joint.On is not { } energy || _values[energy] == 0) && (joint.Carries is not { } fluid || _values[fluid] == 0));

    private bool Together(Joint joint) =>
        joint.Role == JointRole.Cover || AssemblyOf(joint.Owner) == (joint.Other is null ? null : AssemblyOf(joint.Other));

    private static bool Ties(Joint joint, Part part) =>
        joint.Role != JointRole.Cover && joint.Owner.IsWithin(part) != (joint.Other is not null && joint.Other.IsWithin(part));

    private bool GoesAside(Part part, bool refit) =>
        part.Aside is not { } way
        || (way.Joints.All(joint => _values[joint] == 0 || _slack.Contains(joint))
            && way.Conditions.Where(condition => Binds(condition, refit)).All(condition => IsVoidOrSo(condition, AssemblyOf(part.Parent))));

    private bool Reached(MachineItem item, bool refit)
    {
        var (conditions, assembly) = item switch
        {
            Joint joint => (joint.Conditions.Concat(joint.Over?.Conditions ?? []).Concat(Around(joint.Owner)), AssemblyOf(joint.Owner)),
            Part part => (part.Conditions.Concat(Around(part.Parent)), AssemblyOf(part.Parent)),
            _ => (item.Conditions, null),
        };
        return conditions.Where(condition => Binds(condition, refit) && !condition.Each.Any(way => IsAboutItself(way, item)))
            .All(condition => IsVoidOrSo(condition, assembly));
    }

    /// <summary>Whether a condition is about the temporary part that a hand is busy with.</summary>
    private static bool IsAboutItself(Condition condition, MachineItem item) => condition.Item is Part { IsTemporary: true } temporary && (item switch
    {
        Part part => part.IsWithin(temporary),
        Joint { Over: { } hidden } => IsAboutItself(condition, hidden),
        Joint joint => joint.Owner.IsWithin(temporary) || Ties(joint, temporary),
        _ => false,
    });

    /// <summary>The conditions of a part and all around it, up to the bench it is on.</summary>
    private IEnumerable<Condition> Around(Part? part)
    {
        for (; part is not null && Place(part) != PartPlace.Out; part = part.Parent)
        {
            foreach (var condition in part.Conditions)
            {
                yield return condition;
            }
        }
    }

    private Part? AssemblyOf(Part? part) => part is null || Place(part) == PartPlace.Out ? part : AssemblyOf(part.Parent);

    private bool IsVoid(Condition condition, Part? assembly) => condition.Item switch
    {
        Part part => AssemblyOf(part.Parent) != assembly,
        Joint joint => AssemblyOf(joint.Owner) != assembly,
        _ => assembly is not null,
    };

    private bool IsSo(Condition condition) => (condition.State, condition.Item) switch
    {
        (NeededState.OutOfTheWay, Part part) => Place(part) != PartPlace.Fitted,
        (NeededState.Out, Part part) => Place(part) == PartPlace.Out,
        (NeededState.Fitted, Part { IsTemporary: true } part) => Place(part) == PartPlace.Fitted
            && _machine.Joints.All(joint => joint.Role != JointRole.Held || !Ties(joint, part) || On(joint)),
        (NeededState.Fitted, Part part) => Place(part) == PartPlace.Fitted,
        (NeededState.Aside, Part part) => Place(part) == PartPlace.Aside,
        (NeededState.Supported, Part part) => _propped.Contains(part),
        (NeededState.Off, Joint joint) => _values[joint] == 0,
        (NeededState.Slack, Joint joint) => _values[joint] == 0 || _slack.Contains(joint),
        (NeededState.Live or NeededState.Full, _) => _values[condition.Item] == 1,
        (NeededState.Isolated or NeededState.Empty, _) => _values[condition.Item] == 0,
        _ => _values[condition.Item] == condition.Position,
    };
}

/// <summary>An action as a person does it: pieces, a position, or the place that a part goes to, as the value.</summary>
internal readonly record struct Move(Verb Verb, MachineItem Item, int Value = 0)
{
    /// <summary>Moves in words, for what a test says when it fails.</summary>
    public static string Words(IEnumerable<Move> moves) => string.Join(", ", moves.Select(move => $"{move.Verb} {move.Item.Name} {move.Value}"));
}
