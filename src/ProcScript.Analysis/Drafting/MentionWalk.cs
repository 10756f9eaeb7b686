using System.Collections.Immutable;
using ProcScript.Model.Names;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax;

namespace ProcScript.Analysis.Drafting;

/// <summary>Goes through a procedure and collects what it names. It needs no machine: there may be none yet.</summary>
internal sealed class MentionWalk
{
    // A loop in a loop in a loop may roll out into anything; what is drafted from so many steps is the same.
    private const int Most = 20_000;
    private const int Deepest = 8;

    private readonly Func<string, ProcedureSyntax?> _find;
    private readonly List<Mention> _items = [];
    private readonly List<(string Keyword, string Name)> _catalog = [];
    private ImmutableDictionary<string, string> _values = ImmutableDictionary.Create<string, string>(StringComparer.Ordinal);
    private bool _inStrip = true;
    private int _depth;

    private MentionWalk(Func<string, ProcedureSyntax?> find) => _find = find;

    /// <summary>What a procedure names.</summary>
    /// <param name="tree">The file.</param>
    /// <param name="procedure">The procedure.</param>
    /// <param name="find">Finds a procedure that it calls.</param>
    public static ProcedureMentions Of(SyntaxTree tree, ProcedureSyntax procedure, Func<string, ProcedureSyntax?> find)
    {
        var walk = new MentionWalk(find);
        walk.Choose(procedure.Parameters, procedure.Items);
        return new ProcedureMentions(tree, procedure, [.. walk._items], [.. walk._catalog.Distinct()]);
    }

    /// <summary>Every choice of arguments names its own items.</summary>
    private void Choose(ReadOnlySpan<ParameterSyntax> parameters, ImmutableArray<SyntaxNode> items)
    {
        if (parameters.IsEmpty)
        {
            Walk(items);
            return;
        }

        foreach (var value in parameters[0].Values.Values)
        {
            var before = _values;
            _values = _values.SetItem(parameters[0].Name.Text, value.Text);
            Choose(parameters[1..], items);
            _values = before;
        }
    }

    private void Choose(ImmutableArray<ParameterSyntax> parameters, ImmutableArray<SyntaxNode> items) => Choose(parameters.AsSpan(), items);

    private void Walk(IEnumerable<SyntaxNode> nodes)
    {
        foreach (var node in nodes)
        {
            if (_items.Count >= Most)
            {
                return;
            }

            Walk(node);
        }
    }

    private void Walk(SyntaxNode node)
    {
        switch (node)
        {
            case GoalSyntax goal:
                Add(goal.Target, ItemSorts.OfVerb(goal.Verb.Text), "", inStrip: false);
                break;
            case ActionSyntax action:
                Action(action);
                Walk(action.Properties);
                break;
            case DiscardSyntax discard:
                Add(discard.Target, sort: null, "discard", _inStrip);
                break;
            case EachSyntax each:
                Each(each);
                break;
            case DoSyntax call:
                Call(call);
                break;
            case RefitSyntax refit:
                Refit(refit);
                break;
            case OrderSyntax order:
                Add(order.Target, ItemSorts.OfVerb(order.Verb.Text), order.Verb.Text, inStrip: false, order.Position?.Text);
                break;
            case OrderRuleSyntax rule:
                Add(rule.Target, ItemSorts.OfVerb(rule.Verb.Text), rule.Verb.Text, inStrip: false, rule.Position?.Text);
                Walk(rule.Order);
                break;
            case OpenRuleSyntax rule:
                Add(rule.Target, ItemSorts.OfVerb(rule.Verb.Text), rule.Verb.Text, inStrip: false);
                Walk(rule.While);
                break;
            case SnugRuleSyntax or RetorqueRuleSyntax:
                AddAll(node.Children.OfType<ReferenceSyntax>(), ItemSort.Fastener);
                Walk(node.Children.Where(child => child is not ReferenceSyntax));
                break;
            case PowerSyntax power:
                AddAll(power.Energies, ItemSort.Energy);
                break;
            case WhileSyntax open:
                AddAll(open.Open, sort: null);
                break;
            case NeedSyntax need:
                Add(need.Item, need.Position is null ? ItemSorts.OfState(need.State?.Text ?? "") : ItemSort.Control, "", inStrip: false, need.Position?.Text);
                break;
            case NamesPropertySyntax { Keyword.Text: "tool" or "drive" } tools:
                Catalog("tool", tools.Names);
                break;
            case NamesPropertySyntax { Keyword.Text: "certified" } certified:
                Catalog("certificate", certified.Names);
                break;
            case NamesPropertySyntax { Keyword.Text: "in" }:
                break;
            case UsesPropertySyntax uses:
                Catalog("supply", [uses.Supply]);
                break;
            case TextActionSyntax action:
                Catalog("tool", action.Instruments);
                Walk(action.Children.Where(child => child is not ReferenceSyntax));
                break;
            case CheckRuleSyntax check:
                Catalog("tool", check.Instruments);
                Walk(check.Children.Where(child => child is not ReferenceSyntax));
                break;
            case ReferenceSyntax:
                break;
            default:
                Walk(node.Children);
                break;
        }
    }

    private void Action(ActionSyntax action)
    {
        var verb = action.Verb.Text;
        if (NameOf(action.Target) is { } name)
        {
            _items.Add(new Mention(name, ItemSorts.OfVerb(verb), verb, _inStrip)
            {
                Pieces = action.Pieces,
                Amount = action.Pieces?.Count.Value ?? action.Amount?.Count ?? (action.Amount is null ? 0 : 1),
                Position = action.Position?.Text,
            });
        }
    }

    private void Each(EachSyntax each)
    {
        var before = _values;
        foreach (var value in each.Values.Values)
        {
            _values = before.SetItem(each.Variable.Text, value.Text);
            Walk(each.Body);
        }

        _values = before;
    }

    private void Call(DoSyntax call)
    {
        if (_depth >= Deepest || _find(call.Procedure.Text) is not { } called || called.Parameters.Length != call.Arguments.Length)
        {
            return;
        }

        var before = _values;
        _values = called.Parameters.Zip(call.Arguments).Aggregate(
            before.Clear(), (values, pair) => values.SetItem(pair.First.Name.Text, before.GetValueOrDefault(pair.Second.Text, pair.Second.Text)));
        _depth++;
        Walk(called.Items.Where(item => item is not GoalSyntax));
        _depth--;
        _values = before;
    }

    private void Refit(RefitSyntax refit)
    {
        var before = _inStrip;
        _inStrip = false;
        Walk(refit.Rules);
        _inStrip = before;
    }

    private void AddAll(IEnumerable<ReferenceSyntax> references, ItemSort? sort)
    {
        foreach (var reference in references)
        {
            Add(reference, sort, "", inStrip: false);
        }
    }

    private void Add(ReferenceSyntax reference, ItemSort? sort, string verb, bool inStrip, string? position = null)
    {
        if (NameOf(reference) is { } name)
        {
            _items.Add(new Mention(name, sort, verb, inStrip) { Position = position });
        }
    }

    private void Catalog(string keyword, IEnumerable<ReferenceSyntax> names) =>
        _catalog.AddRange(names.Where(name => !name.Name.IsMissing).Select(name => (keyword, name.Name.Text)));

    private string? NameOf(ReferenceSyntax reference)
    {
        if (reference.Name.IsMissing || reference.Indices.Any(index => index.IsMissing))
        {
            return null;
        }

        return CanonicalName.Written(reference.Name.Text, [.. reference.Indices.Select(index => _values.GetValueOrDefault(index.Text, index.Text))]);
    }
}
