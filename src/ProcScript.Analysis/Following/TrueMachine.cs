using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Analysis.Proving;
using ProcScript.Analysis.Settings;
using ProcScript.Analysis.States;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Following;

/// <summary>
/// The machine as it truly stands while somebody works on it. Unlike a run it takes whatever happened, in the plan or not, and says what that means:
/// what was not as it has to be, what is not safe now, and what was closed over something open.
/// </summary>
public sealed class TrueMachine
{
    private readonly JobCourse _course;
    private readonly MachineFacts _facts;
    private readonly Wordbook _book;

    internal TrueMachine(JobCourse course, MachineState state)
    {
        (_course, _facts, State) = (course, course.Facts, state);
        _book = Wordbook.In(course.Settings.Get(SettingsTable.Language));
    }

    /// <summary>How it stands.</summary>
    public MachineState State { get; }

    /// <summary>The machine in the same state on another course.</summary>
    /// <param name="course">A course on the same machine.</param>
    public TrueMachine On(JobCourse course)
    {
        ArgumentNullException.ThrowIfNull(course);
        return course.Machine == _course.Machine ? new TrueMachine(course, State.Copy()) : new TrueMachine(course, Moved(course));
    }

    /// <summary>What is not as a step needs it, in words; nothing where it may be done.</summary>
    /// <param name="step">A step of the course.</param>
    public ImmutableArray<string> Missing(CourseStep step)
    {
        ArgumentNullException.ThrowIfNull(step);
        return Missing(Request(step, step.Action.Count), step.Phase == CoursePhase.Refit ? NeedsPhase.Refit : NeedsPhase.Strip);
    }

    /// <summary>What is not as an action outside the course needs it, in words.</summary>
    /// <param name="verb">What is done.</param>
    /// <param name="item">To what; the verb suits it.</param>
    /// <param name="count">How many pieces of a joint, or the position of a control.</param>
    public ImmutableArray<string> Missing(Verb verb, MachineItem item, int count) =>
        Missing(Request(verb, item, count), ActionTable.Row(verb).Phase == ActionPhase.Refit ? NeedsPhase.Refit : NeedsPhase.Strip);

    /// <summary>Does a step.</summary>
    /// <param name="step">A step of the course.</param>
    /// <param name="count">How many pieces were moved; null for as many as the step says.</param>
    /// <returns>What changed.</returns>
    public ImmutableArray<StateChange> Do(CourseStep step, int? count = null)
    {
        ArgumentNullException.ThrowIfNull(step);
        return Perform(Request(step, count ?? step.Action.Count));
    }

    /// <summary>Does an action outside the course.</summary>
    /// <param name="verb">What is done.</param>
    /// <param name="item">To what; the verb suits it.</param>
    /// <param name="count">How many pieces of a joint, or the position of a control.</param>
    /// <returns>What changed.</returns>
    public ImmutableArray<StateChange> Do(Verb verb, MachineItem item, int count) => Perform(Request(verb, item, count));

    /// <summary>Takes back what changed.</summary>
    /// <param name="changes">The changes, of this machine, in the order in which they were made.</param>
    public void TakeBack(ImmutableArray<StateChange> changes)
    {
        foreach (var change in changes.Reverse())
        {
            // Of pieces others may have come off since; what is one thing is as it was.
            State[change.Variable] = IsCounted(change.Variable)
                ? Math.Clamp(State[change.Variable] - (change.After - change.Before), 0, _course.Machine.Joints[change.Variable.Index].Count)
                : change.Before;
        }
    }

    /// <summary>How many pieces of a joint are off.</summary>
    /// <param name="joint">The joint.</param>
    public int Off(Joint joint)
    {
        ArgumentNullException.ThrowIfNull(joint);
        return joint.Count - State.Attached(joint);
    }

    /// <summary>Pieces of a joint, and where they belong: <c>2 × M6 × 20 bolt (console, rear)</c>.</summary>
    /// <param name="joint">The joint.</param>
    /// <param name="count">How many.</param>
    public static string Pieces(Joint joint, int count)
    {
        ArgumentNullException.ThrowIfNull(joint);
        return $"{ItemWords.Pieces(count, joint.Kind.Title)} ({ItemWords.Place(joint)})";
    }

    /// <summary>An item by itself, of a joint with its pieces and where it is.</summary>
    /// <param name="item">The item.</param>
    public static string Title(MachineItem item) => ItemWords.Whole(item);

    /// <summary>Whether a verb suits an item.</summary>
    /// <param name="verb">The verb.</param>
    /// <param name="item">The item.</param>
    public static bool Suits(Verb verb, MachineItem item) => ActionTable.Row(verb).Suits(item);

    /// <summary>The verb of a word; null where there is none that changes a machine.</summary>
    /// <param name="word">The word.</param>
    public static Verb? VerbOf(string word) =>
        ActionTable.Rows.FirstOrDefault(row => row.Word == word && !row.Effects.IsEmpty)?.Verb;

    /// <summary>The words of the verbs that change a machine and suit an item.</summary>
    /// <param name="item">The item.</param>
    public static IEnumerable<string> WordsFor(MachineItem item) =>
        ActionTable.Rows.Where(row => !row.Effects.IsEmpty && row.Suits(item)).Select(row => row.Word).Distinct(StringComparer.Ordinal);

    /// <summary>What is not as on the whole machine, without what does not go back.</summary>
    public IEnumerable<OpenThing> NotWhole()
    {
        var standing = new MachineStanding(_course.Strip, State, _book);
        foreach (var energy in _course.Machine.Energies.Where(energy => Value(StateKind.Live, energy) != (int)EnergyState.Live))
        {
            yield return new OpenThing(energy, OpenSort.Energy, energy.Title, (EnergyState)Value(StateKind.Live, energy) == EnergyState.Dead ? "isolated, proved to be off" : "isolated, not proved to be off");
        }

        foreach (var part in standing.PartsOff)
        {
            yield return new OpenThing(part, OpenSort.Part, part.Title, standing.StateOf(part));
        }

        foreach (var joint in standing.JointsOpen)
        {
            yield return new OpenThing(joint, OpenSort.Joint, ItemWords.Whole(joint), standing.StateOf(joint));
        }

        foreach (var fluid in standing.FluidsOut)
        {
            yield return new OpenThing(fluid, OpenSort.Fluid, fluid.Title, _book.Say("state.empty"));
        }

        foreach (var part in standing.PartsPropped)
        {
            yield return new OpenThing(part, OpenSort.Prop, part.Title, "supported");
        }

        foreach (var joint in _course.Machine.Joints.Where(joint => Value(StateKind.Capped, joint) > 0))
        {
            yield return new OpenThing(joint, OpenSort.Cap, ItemWords.Whole(joint), "capped");
        }

        foreach (var part in _course.Machine.Parts.Where(part => Value(StateKind.Plugged, part) == 1))
        {
            yield return new OpenThing(part, OpenSort.Cap, part.Title, "capped");
        }

        foreach (var part in standing.TemporaryOn)
        {
            yield return new OpenThing(part, OpenSort.Temporary, part.Title, _book.Say("state.still-on"));
        }

        foreach (var control in standing.ControlsAway)
        {
            yield return new OpenThing(control, OpenSort.Control, control.Title, ItemWords.Position(control, Value(StateKind.Position, control)));
        }
    }

    /// <summary>What can hurt somebody as the machine stands: something is open on an energy that is live, or on a fluid that is in.</summary>
    public IEnumerable<string> Unsafe()
    {
        var collector = Collector(NeedsPhase.Refit);
        foreach (var energy in _course.Machine.Energies.Where(energy => Value(StateKind.Live, energy) == (int)EnergyState.Live))
        {
            var request = new ActionRequest(Verb.Restore, energy) { Open = AllowedOpen.At(_course.Strip.Procedure, Verb.Restore, energy) };
            foreach (var open in Unmet(collector, request, PowerNeeds.AllOnItClosed))
            {
                yield return $"{ItemPhrases.The(energy)} is live, and {open}";
            }
        }

        foreach (var fluid in _course.Machine.Fluids.Where(fluid => Value(StateKind.Full, fluid) == 1))
        {
            foreach (var open in Unmet(collector, new ActionRequest(Verb.Fill, fluid), ServiceSources.AllThatCarryItClosed))
            {
                yield return $"{ItemPhrases.The(fluid)} is in, and {open}";
            }
        }
    }

    /// <summary>What is open still and cannot be reached any more, since something was closed over it.</summary>
    public IEnumerable<string> Hidden()
    {
        var collector = Collector(NeedsPhase.Refit);
        foreach (var open in NotWhole().Where(open => open.Sort is OpenSort.Part or OpenSort.Joint).ToList())
        {
            var closing = ActionTable.Closing(open.Item).Verb;
            var request = Request(open.Item is Part part && State.Place(part) == PartPlace.Aside ? Verb.Return : closing, open.Item, 1);
            var over = collector.Collect(request)
                .Where(need => need is PartOut or PartAside or PartOutOfTheWay or CoverOff && !collector.IsMet(need) && State[need.Variable] == _course.Strip.Start[need.Variable])
                .Select(need => ItemPhrases.The(need.Item)).Distinct(StringComparer.Ordinal).ToList();
            if (over.Count > 0)
            {
                yield return $"{open.Title} is {open.State}, behind {ItemPhrases.List(over)}";
            }
        }
    }

    /// <summary>The course from here to the whole machine; null where none was found that is proven.</summary>
    public JobCourse? WayHome() => Homeward.Find(_course, State);

    internal NeedCollector Collector(NeedsPhase phase) => new(_facts, State, phase, _course.Strip.Discarded);

    private ImmutableArray<string> Missing(ActionRequest request, NeedsPhase phase)
    {
        var collector = Collector(phase);
        var asked = request.Verb == Verb.Isolate ? collector.Isolating() : collector;
        return [.. asked.Collect(request).Where(need => !collector.IsMet(need)).Select(NeedPhrases.IsNot).Distinct(StringComparer.Ordinal)];
    }

    private static IEnumerable<string> Unmet(NeedCollector collector, ActionRequest request, Action<ActionRequest, NeedCollector> source)
    {
        collector.AllMetOf(request, source);
        return collector.Last.Where(need => !collector.IsMet(need)).Select(NeedPhrases.IsNot).Distinct(StringComparer.Ordinal);
    }

    private ActionRequest Request(CourseStep step, int count)
    {
        var request = RefitProof.Request(step.Action, _course.Strip.Procedure);
        return step.Target is Joint ? request with { Value = count } : request;
    }

    private ActionRequest Request(Verb verb, MachineItem item, int count) => Verification.Prepared(
        new ActionRequest(verb, item, item switch
        {
            Joint or Control => count,
            Part => (int)PartPlace.Fitted,
            _ => 0,
        }),
        Collector(NeedsPhase.Strip));

    private ImmutableArray<StateChange> Perform(ActionRequest request)
    {
        if (request.Target is null)
        {
            return [];
        }

        var changes = ActionEffect.On(State, request)
            .Select(change => IsCounted(change.Variable) ? change with { After = Math.Clamp(change.After, 0, _course.Machine.Joints[change.Variable.Index].Count) } : change)
            .Where(change => change.Before != change.After)
            .ToImmutableArray();
        State.Apply(changes);
        return changes;
    }

    private static bool IsCounted(StateVariable variable) => variable.Kind is StateKind.Attached or StateKind.Capped;

    private int Value(StateKind kind, MachineItem item) => State[new StateVariable(kind, item.Index)];

    /// <summary>This state on the machine of another course, item by item of the same name.</summary>
    private MachineState Moved(JobCourse course)
    {
        var moved = MachineState.Whole(course.Facts.Layout);
        foreach (var variable in _course.Strip.Start.Differences(State))
        {
            var item = MachineItems.Of(_course.Machine, variable);
            if (course.Machine.Items.TryGetValue(item.Name, out var same) && same.GetType() == item.GetType())
            {
                var value = State[variable];
                moved[variable with { Index = same.Index }] = IsCounted(variable) ? Math.Min(value, ((Joint)same).Count) : value;
            }
        }

        return moved;
    }
}
