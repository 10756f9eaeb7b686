using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Machines;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Binding.Quantities;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Procedures;

/// <summary>Binds the lines of a procedure's refit block.</summary>
internal sealed class RefitRuleBinder(ItemLookup items, ConditionBinder conditions, FindingSink sink)
{
    /// <summary>An order of two refit actions, or null where a name in it does not resolve, which is reported.</summary>
    public OrderRule? Order(OrderRuleSyntax syntax, BindingPlace place)
    {
        var own = Anchor(syntax.Verb, syntax.Target, place);
        var other = Anchor(syntax.Order.Verb, syntax.Order.Target, place);
        if (own is null || other is null)
        {
            return null;
        }

        return syntax.Order.Keyword.Text == "after"
            ? new OrderRule(other, own, place.At(syntax.Span))
            : new OrderRule(own, other, place.At(syntax.Span));
    }

    /// <summary>A check within the refit, or null where a name in it does not resolve, which is reported.</summary>
    public CheckRule? Check(CheckRuleSyntax syntax, ImmutableArray<Alert> alerts, BindingPlace place)
    {
        var text = AuthorText.Bind(syntax.Text, place, sink);
        var expect = QuantityBinder.Bind(syntax.Expect, place, sink);
        var needs = conditions.Needs(syntax.Needs, place);
        var anchor = syntax.Order is { } order ? Anchor(order.Verb, order.Target, place) : null;
        if (syntax.Order is not null && anchor is null)
        {
            return null;
        }

        var isAfter = syntax.Order?.Keyword.Text == "after";
        return new CheckRule(text, expect, needs, isAfter ? null : anchor, isAfter ? anchor : null, alerts, place.At(syntax.Span));
    }

    private RefitAnchor? Anchor(WordSyntax word, ReferenceSyntax target, BindingPlace place)
    {
        var item = items.Find(target, place);
        if (Verbs.Find(word.Text) is not { } verb)
        {
            sink.Poison();
            return null;
        }

        return item is null ? null : new RefitAnchor(verb, item, place.At(word.Span.Cover(target.Span)));
    }
}
