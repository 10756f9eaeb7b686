using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Machines;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Procedures;

/// <summary>Makes a procedure of one variant with one choice of arguments: unrolls <c>each</c>, <c>when</c> and <c>do</c>.</summary>
internal sealed class ProcedureElaborator
{
    private readonly ProcedureOutline _outline;
    private readonly BoundMachine _machine;
    private readonly FindingSink _sink = new();
    private readonly StepBinder _steps;
    private readonly RefitRuleBinder _rules;
    private readonly DetailsBinder _details;
    private readonly ItemLookup _items;
    private readonly UnrollBudget _budget;
    private readonly ProcedureCalls _calls;
    private readonly ImmutableArray<Goal>.Builder _goals = ImmutableArray.CreateBuilder<Goal>();
    private readonly ImmutableArray<Stage>.Builder _stages = ImmutableArray.CreateBuilder<Stage>();
    private readonly ImmutableArray<RefitRule>.Builder _refit = ImmutableArray.CreateBuilder<RefitRule>();
    private readonly List<Alert> _alerts = [];
    private readonly List<PropertySyntaxAt> _properties = [];
    private readonly StepList _work;
    private readonly StepList _discards;

    private ProcedureElaborator(ProcedureOutline outline, ProcedureOutlines outlines, BoundMachine machine, int times, SymbolLookup lookup)
    {
        _outline = outline;
        _machine = machine;
        _items = new ItemLookup(machine.Outline, machine.Machine.Items, machine.Machine.Places.ToDictionary(place => place.Name, StringComparer.Ordinal), machine.Variant, _sink);
        var conditions = new ConditionBinder(_items, _sink);
        _details = new DetailsBinder(lookup, _items, conditions, _sink);
        _steps = new StepBinder(_items, conditions, _details, _sink);
        _rules = new RefitRuleBinder(_items, conditions, _details, _steps, _sink);
        _budget = new UnrollBudget(outline.Symbol.Name, times, _sink);
        _calls = new ProcedureCalls(outlines, lookup, machine.Variant, _sink);
        _work = new StepList(_sink);
        _discards = new StepList(_sink);
    }

    /// <summary>The procedure with these arguments on a machine.</summary>
    public static ProcedureDraft Elaborate(
        ProcedureOutline outline,
        ProcedureOutlines outlines,
        BoundMachine machine,
        ImmutableArray<string> arguments,
        int times,
        SymbolLookup lookup) =>
        new ProcedureElaborator(outline, outlines, machine, times, lookup).Elaborate(arguments);

    private ProcedureDraft Elaborate(ImmutableArray<string> arguments)
    {
        var place = BindingPlace.In(_outline.Symbol.File) with { Guards = _outline.Head.Guards };
        foreach (var (parameter, value) in _outline.Parameters.Zip(arguments))
        {
            place = place with { Bindings = place.Bindings.With(parameter.Name, value, parameter.Domain, parameter.Declared) };
        }

        Items(_outline.Symbol.Node.Items, place, new CallFrame(_outline, [], null), into: null);
        var title = _outline.Symbol.Node.Title is { } text ? AuthorText.Bind(text, place, _sink) : AuthorText.Named(_outline.Symbol.Node.Name, place);
        return new ProcedureDraft
        {
            Head = _outline.Head,
            Called = _calls.Called,
            Machine = _machine,
            Arguments = arguments,
            Parameters = [.. _outline.Parameters.Select(parameter => parameter.Name)],
            Title = title,
            Goals = _goals.ToImmutable(),
            Alerts = [.. _alerts.DistinctBy(alert => alert.Source)],
            Details = ProcedureDetails.Bind(_properties, _details),
            Stages = _stages.ToImmutable(),
            Work = [.. _work.Close(), .. _discards.Close()],
            Rules = _refit.ToImmutable(),
            Sink = _sink,
        };
    }

    /// <summary>Walks what stands in a procedure.</summary>
    /// <param name="items">What stands there.</param>
    /// <param name="place">Where.</param>
    /// <param name="frame">The procedure whose text it is.</param>
    /// <param name="into">The stage whose <c>do</c> called it; null between stages.</param>
    private void Items(IEnumerable<SyntaxNode> items, BindingPlace place, CallFrame frame, StepList? into)
    {
        foreach (var item in items)
        {
            if (!_budget.Spend(place, item))
            {
                return;
            }

            Item(item, place, frame, into);
        }
    }

    private void Item(SyntaxNode item, BindingPlace place, CallFrame frame, StepList? into)
    {
        switch (item)
        {
            case StageSyntax stage when into is not null:
                Steps(stage.Steps, place, frame, into);
                break;
            case StageSyntax stage:
                var steps = new StepList(_sink);
                Steps(stage.Steps, place, frame, steps);
                _stages.Add(new Stage(AuthorText.Bind(stage.Title, place, _sink), steps.Close(), place.At(stage.Span)));
                break;
            case DoSyntax call:
                Call(call, place, frame, into);
                break;
            case GoalSyntax goal when !frame.IsCalled:
                Goal(goal, place);
                break;
            case WorkSyntax work when !frame.IsCalled:
                Steps(work.Steps, place, frame, _work);
                break;
            case RefitSyntax refit:
                var alerts = new PendingAlerts(_sink);
                Rules(refit.Rules, place, frame, alerts);
                alerts.ReportLeft();
                break;
            case EachSyntax each:
                foreach (var turn in _budget.Turns(each, place))
                {
                    Items(each.Body, turn, frame, into);
                }

                break;
            case WhenSyntax branch when Applies(branch, place) is { } body:
                Items(branch.Body, body, frame, into);
                break;
            case AlertSyntax { Phase: NeedsPhase.Both } alert:
                _alerts.Add(Alerts.Bind(alert, place, _sink));
                break;
            case PropertySyntax property:
                _properties.Add(new PropertySyntaxAt(property, place, frame));
                break;
        }
    }

    private void Goal(GoalSyntax goal, BindingPlace place)
    {
        if (_items.Find(goal.Target, place) is { } target && Verbs.Find(goal.Verb.Text) is { } verb)
        {
            _goals.Add(new Goal(verb, target, place.At(goal.Span)));
        }
    }

    private void Steps(ImmutableArray<SyntaxNode> steps, BindingPlace place, CallFrame frame, StepList into)
    {
        foreach (var step in steps)
        {
            if (!_budget.Spend(place, step))
            {
                return;
            }

            switch (step)
            {
                case AlertSyntax alert:
                    into.Add(Alerts.Bind(alert, place, _sink), place.Guards);
                    break;
                case ActionSyntax action:
                    into.Add(Within(frame, _steps.Action(action, place, frame.Calls)));
                    break;
                case TextActionSyntax text:
                    into.Add(Within(frame, _steps.Text(text, place, frame.Calls)));
                    break;
                case DiscardSyntax discard:
                    into.Add(Within(frame, _steps.Discard(discard, place, frame.Calls)));
                    break;
                case DoSyntax call:
                    Call(call, place, frame, into);
                    break;
                case EachSyntax each:
                    foreach (var turn in _budget.Turns(each, place))
                    {
                        Steps(each.Body, turn, frame, into);
                    }

                    break;
                case WhenSyntax branch when Applies(branch, place) is { } body:
                    Steps(branch.Body, body, frame, into);
                    break;
            }
        }
    }

    private void Rules(ImmutableArray<SyntaxNode> rules, BindingPlace place, CallFrame frame, PendingAlerts alerts)
    {
        foreach (var rule in rules)
        {
            if (!_budget.Spend(place, rule))
            {
                return;
            }

            switch (rule)
            {
                case AlertSyntax alert:
                    alerts.Add(Alerts.Bind(alert, place, _sink), place.Guards);
                    break;
                case OrderRuleSyntax order:
                    alerts.ReportLeft();
                    AddPresent(_rules.Order(order, place), frame);
                    break;
                case OpenRuleSyntax open:
                    alerts.ReportLeft();
                    AddPresent(_rules.Open(open, place), frame);
                    break;
                case SnugRuleSyntax snug:
                    alerts.ReportLeft();
                    AddAll(_rules.Snug(snug, place), frame);
                    break;
                case RetorqueRuleSyntax { Later: not null } due:
                    alerts.ReportLeft();
                    AddAll(_rules.Retorque(due, [], place), frame);
                    break;
                case RetorqueRuleSyntax retorque:
                    AddAll(_rules.Retorque(retorque, alerts.Take(), place), frame);
                    break;
                case TestRuleSyntax test:
                    AddPresent(_rules.Test(test, alerts.Take(), place, frame.Calls), frame);
                    break;
                case CheckRuleSyntax check:
                    AddPresent(_rules.Check(check, alerts.Take(), place), frame);
                    break;
                case DiscardSyntax discard:
                    alerts.ReportLeft();
                    _discards.Add(Within(frame, _steps.Discard(discard, place, frame.Calls)));
                    break;
                case EachSyntax each:
                    foreach (var turn in _budget.Turns(each, place))
                    {
                        Rules(each.Body, turn, frame, alerts);
                    }

                    break;
                case WhenSyntax branch when Applies(branch, place) is { } body:
                    Rules(branch.Body, body, frame, alerts);
                    break;
            }
        }
    }

    /// <summary>The step as the call asks for it that brings it.</summary>
    private static Step? Within(CallFrame frame, Step? step) =>
        step is null || frame.WhereNeeded is null ? step : step with { WhereNeeded = frame.WhereNeeded };

    private void AddAll(IEnumerable<RefitRule> rules, CallFrame frame)
    {
        foreach (var rule in rules)
        {
            AddPresent(rule, frame);
        }
    }

    private void AddPresent(RefitRule? rule, CallFrame frame)
    {
        // What is left out where it is done already brings no rule twice.
        if (rule is not null && (frame.WhereNeeded is null || !_refit.Any(other => RefitRules.AreOne(other, rule))))
        {
            _refit.Add(frame.IsCalled ? rule with { Calls = frame.Calls } : rule);
        }
    }

    private void Call(DoSyntax call, BindingPlace place, CallFrame frame, StepList? into)
    {
        if (_calls.Enter(call, place, frame) is { } entered)
        {
            Items(entered.Frame.Outline.Symbol.Node.Items, entered.Place, entered.Frame, into);
        }
    }

    /// <summary>The place of the body, or null where it does not count here.</summary>
    private BindingPlace? Applies(WhenSyntax branch, BindingPlace place)
    {
        var body = Unrolling.When(branch.Test, place, _machine.Outline.OptionNames, _sink);
        return body is not null && body.Guards.Hold(_machine.Variant) ? body : null;
    }
}
