using System.Collections.Immutable;
using ProcScript.Analysis.Fluids;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Analysis.Stripping;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Plans.Steps;

/// <summary>The steps of a plan, numbered through, and the titles of their cards.</summary>
/// <param name="Steps">The steps, in order.</param>
/// <param name="Cards">The titles of the cards of strip and refit, in order.</param>
internal sealed record StepList(ImmutableArray<PlannedStep> Steps, IReadOnlyDictionary<PlanPhase, ImmutableArray<string>> Cards)
{
    /// <summary>What the new parts change about fluids.</summary>
    public required ImmutableArray<BroughtChange> Brought { get; init; }

    /// <summary>The same in English, as findings tell of steps.</summary>
    public static StepList Of(StripRun strip, RefitRun refit) => Of(strip, refit, Wordbook.English);

    /// <summary>Numbers the actions of a proven procedure.</summary>
    public static StepList Of(StripRun strip, RefitRun refit, Wordbook book)
    {
        var stages = strip.Stages.Where(stage => !stage.Actions.IsEmpty).ToList();
        var cards = RefitCards.Deal(strip, refit, book);
        var build = new Build(strip, refit, book);
        foreach (var (card, stage) in stages.Index())
        {
            build.Add(stage.Actions, PlanPhase.Strip, _ => card);
        }

        build.Add(strip.Work, PlanPhase.Work, _ => 0);
        build.Add(refit.Actions, PlanPhase.Refit, action => cards.CardOf[action.Number]);
        return new StepList(build.ToImmutable(), new Dictionary<PlanPhase, ImmutableArray<string>>
        {
            [PlanPhase.Strip] = [.. stages.Select(CardTitle)],
            [PlanPhase.Work] = [book.Say("title.work")],
            [PlanPhase.Refit] = cards.Titles,
        })
        {
            Brought = build.Brought,
        };
    }

    /// <summary>The number of the step that an action is. Runs number from 0, cards from 1.</summary>
    internal static int NumberOf(int action) => action + 1;

    /// <summary>The title of a stage as a card heads it: a title that opens with a variable's value opens in lower case.</summary>
    internal static string CardTitle(StageRun stage) => stage.Stage.Title is [var first, .. var rest]
        ? $"{char.ToUpperInvariant(first)}{rest}"
        : "";

    private sealed class Build(StripRun strip, RefitRun refit, Wordbook book)
    {
        private readonly ImmutableArray<PlannedStep>.Builder _steps = ImmutableArray.CreateBuilder<PlannedStep>();
        private readonly Capping _capping = Capping.Of(strip.Facts, strip.Procedure);
        private readonly Dictionary<StateVariable, int> _state = [];
        private readonly ILookup<int, int> _enabledBy =
            strip.Order.Concat(refit.Order).ToLookup(edge => edge.Later, edge => edge.Earlier);
        private readonly Dictionary<int, int> _mirrors = Mirrors(refit);
        private readonly Dictionary<TestRule, int> _testNumbers = new(ReferenceEqualityComparer.Instance);
        private readonly Dictionary<int, int> _renewed = RenewedPieces.ByAction(strip);
        private readonly HashSet<TestRule> _tests = new(ReferenceEqualityComparer.Instance);
        private readonly Dictionary<Step, (PlanPhase Phase, int Card)> _warned = new(ReferenceEqualityComparer.Instance);

        public ImmutableArray<BroughtChange> Brought { get; } = BroughtChange.Of(strip);

        public void Add(ImmutableArray<PerformedAction> actions, PlanPhase phase, Func<PerformedAction, int> card)
        {
            foreach (var action in actions)
            {
                var count = CountOf(action);
                foreach (var change in action.Changes)
                {
                    _state[change.Variable] = change.After;
                }

                _steps.Add(Step(action, phase, card(action)) with { Count = count });
            }
        }

        public ImmutableArray<PlannedStep> ToImmutable() => Renewals.WithWhatGoesInWithTheNew(_steps.ToImmutable());

        private PlannedStep Step(PerformedAction action, PlanPhase phase, int card)
        {
            var (own, mirrored) = IsWarned(action, phase, card) ? ([], []) : StepOrigin.Alerts(action.Origin);
            var given = StepOrigin.GivenAlerts(action.Origin);
            var written = (action.Origin as WrittenStep)?.Step ?? (action.Origin as TestStep)?.Step;
            var rule = (action.Origin as RuledCheck)?.Rule;
            return new PlannedStep
            {
                Book = book,
                Number = NumberOf(action.Number),
                Phase = phase,
                Card = card,
                Verb = action.Verb,
                Target = action.Target,
                LeavesSlack = action.Target is Joint joint && IsSlack(joint),
                OtherHalf = OtherHalf(action),
                Position = action.PositionAfter,
                Conditions = action.Origin.Conditions,
                Test = action.Origin is TestStep { Rule: var within } ? TestNumberOf(within) : 0,
                Text = written?.Text ?? rule?.Text,
                Expect = written?.Expect ?? rule?.Expect,
                Details = action.Origin is Retorqued ? OfFastening(action) : StepOrigin.Details(action),
                Alerts = action.Origin is TestStep { Rule: var test } && _tests.Add(test) ? [.. test.Alerts, .. own] : own.AddRange(given.Own),
                MirroredAlerts = mirrored.AddRange(given.Mirrored),
                InBackground = action.InBackground,
                Cure = action.Cure,
                WaitsFor = [.. action.WaitsFor.Select(NumberOf)],
                EnabledBy = [.. _enabledBy[action.Number].Distinct().Order().Select(NumberOf)],
                Mirror = _mirrors.TryGetValue(action.Number, out var mirror) ? NumberOf(mirror) : 0,
                Fate = FateOf(action.Target),
                Renewed = _renewed.GetValueOrDefault(action.Origin is InverseOf inverse ? inverse.Action.Number : action.Number),
                EndsProved = action.Changes is [{ Variable.Kind: StateKind.Live, After: (int)EnergyState.Dead }],
                ProvedAt = action is { Verb: Verb.Isolate, Changes: [{ After: (int)EnergyState.Unproved }] } ? Proof(action) : 0,
                Open = action.Verb == Verb.Restore ? OpenAt(action) : [],
                Brings = Brings(action),
                Charge = action is { Verb: Verb.Fill, Target: Fluid fluid } ? ChargeBand.Of(fluid, Brings(action).Select(brought => brought.Change)) : null,
                BareSide = action is { Verb: Verb.Cap or Verb.Uncap, Target: Joint capped } ? _capping.GoesAway(capped) : null,
                Derived = action.IsDerived,
                Because = StepOrigin.Because(action, book),
                Source = StepOrigin.Source(action),
            };
        }

        /// <summary>
        /// Whether the alerts of the author's step stand on the card already: those of a <c>strip</c> stand before the first of the actions
        /// that it expands to, for they must not come after what they warn of.
        /// </summary>
        private bool IsWarned(PerformedAction action, PlanPhase phase, int card)
        {
            if (StepOrigin.Step(action.Origin) is not { } step)
            {
                return false;
            }

            var isWarned = _warned.TryGetValue(step, out var at) && at == (phase, card);
            _warned[step] = (phase, card);
            return isWarned;
        }

        /// <summary>How many pieces it is about: those that it moves, else those that are on; where none is, all of them.</summary>
        private int CountOf(PerformedAction action) => action switch
        {
            { Verb: Verb.Cap or Verb.Uncap } => Math.Max(1, action.Count) * _capping.CapsEach(action.Target!),
            { Count: > 0 } => action.Count,
            { Target: Joint joint } =>
                _state.GetValueOrDefault(new StateVariable(StateKind.Attached, joint.Index), joint.Count) is > 0 and var on ? on : joint.Count,
            _ => 0,
        };

        private int TestNumberOf(TestRule test)
        {
            if (!_testNumbers.TryGetValue(test, out var number))
            {
                _testNumbers.Add(test, number = _testNumbers.Count + 1);
            }

            return number;
        }

        private ImmutableArray<BroughtChange> Brings(PerformedAction action) => Brought.IsEmpty ? [] : action switch
        {
            { Verb: Verb.Fit, Target: Part part } => [.. Brought.Where(brought => brought.With == part)],
            { Verb: Verb.Fill, Target: Fluid fluid } => [.. Brought.Where(brought => brought.Fluid == fluid && brought.Change.Supply is null)],
            _ => [],
        };

        private int Proof(PerformedAction isolation) =>
            strip.Actions.FirstOrDefault(action => action.Number > isolation.Number && action.Verb == Verb.Verify && action.Target == isolation.Target)
                is { } proof ? NumberOf(proof.Number) : 0;

        private ImmutableArray<OpenItem> OpenAt(PerformedAction action) => action.Origin is TestStep test
            ? test.Rule.Open
            : [.. AllowedOpen.Rules(strip.Procedure, action.Verb, action.Target)];

        private Fate FateOf(MachineItem? item) => item switch
        {
            null => Fate.GoesBack,
            _ when strip.Discarded.Contains(item) => Fate.Discarded,
            _ when strip.Replaced.Contains(item) => Fate.Renewed,
            _ => Fate.GoesBack,
        };

        /// <summary>The step that tightens what goes in slack here, or the one at which that went in which is tightened here; 0 where there is none.</summary>
        private int OtherHalf(PerformedAction action)
        {
            var half = action switch
            {
                { Verb: Verb.Snug or Verb.Fasten, Target: Joint joint } when IsSlack(joint) =>
                    refit.Actions.FirstOrDefault(later => later.Number > action.Number && later.Verb == Verb.Tighten && later.Target == joint),
                { Verb: Verb.Tighten } => refit.Actions.LastOrDefault(earlier =>
                    earlier.Number < action.Number && earlier.Verb is Verb.Snug or Verb.Fasten && earlier.Target == action.Target),
                _ => null,
            };
            return half is null ? 0 : NumberOf(half.Number);
        }

        private bool IsSlack(Joint joint) => _state.GetValueOrDefault(new StateVariable(StateKind.Slack, joint.Index)) == 1;

        /// <summary>What holds for the torque once more: what held for it the first time.</summary>
        private ActionDetails OfFastening(PerformedAction retorque)
        {
            var first = refit.Actions.LastOrDefault(action =>
                action.Number < retorque.Number && action.Target == retorque.Target && action.Verb is Verb.Fasten or Verb.Tighten);
            var details = first is null ? ActionDetails.None : StepOrigin.Details(first);
            return ActionDetails.None with
            {
                Torque = details.Torque,
                Tools = details.Tools,
                Pattern = details.Pattern,
                Certificates = details.Certificates,
                In = details.In,
                Ppe = details.Ppe,
                People = details.People,
            };
        }

        private static Dictionary<int, int> Mirrors(RefitRun refit)
        {
            var mirrors = new Dictionary<int, int>();
            foreach (var action in refit.Actions)
            {
                if (action.Origin is InverseOf inverse)
                {
                    mirrors.Add(action.Number, inverse.Action.Number);
                    mirrors.Add(inverse.Action.Number, action.Number);
                }
            }

            return mirrors;
        }
    }
}
