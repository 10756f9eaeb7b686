using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Machines;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Binding.Quantities;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Rules.Names;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Binding.Procedures;

/// <summary>Binds the lines of a procedure's refit block.</summary>
internal sealed class RefitRuleBinder(ItemLookup items, ConditionBinder conditions, DetailsBinder details, StepBinder steps, FindingSink sink)
{
    /// <summary>An order of two refit actions, or null where a name in it does not resolve, which is reported.</summary>
    public OrderRule? Order(OrderRuleSyntax syntax, BindingPlace place)
    {
        var own = Anchor(syntax.Verb, syntax.Target, place, syntax.Position);
        var other = Anchor(syntax.Order.Verb, syntax.Order.Target, place, syntax.Order.Position);
        if (own is null || other is null)
        {
            return null;
        }

        return syntax.Order.Keyword.Text == "after"
            ? new OrderRule(other, own, place.At(syntax.Span))
            : new OrderRule(own, other, place.At(syntax.Span));
    }

    /// <summary>Joints that go in finger-tight, and their order where it is said; names that do not resolve are reported and left out.</summary>
    public IEnumerable<RefitRule> Snug(SnugRuleSyntax syntax, BindingPlace place)
    {
        var joints = syntax.Targets.Select(target => Anchor(syntax.Verb, target, place)).OfType<RefitAnchor>().ToImmutableArray();
        if (joints.IsEmpty)
        {
            return [];
        }

        var other = syntax.Order is { } order ? Anchor(order.Verb, order.Target, place, order.Position) : null;
        var source = place.At(syntax.Span);
        return
        [
            new SnugRule(joints, source),
            .. other is null ? [] : joints.Select(joint => syntax.Order!.Keyword.Text == "after"
                ? new OrderRule(other, joint, source)
                : new OrderRule(joint, other, source)),
        ];
    }

    /// <summary>The torque once more; names that do not resolve are reported and left out.</summary>
    public IEnumerable<RefitRule> Retorque(RetorqueRuleSyntax syntax, ImmutableArray<Alert> alerts, BindingPlace place)
    {
        var later = syntax.Later is { } text ? AuthorText.Bind(text, place, sink) : null;
        var needs = conditions.Needs(syntax.Needs, place);
        var anchor = syntax.Order is { } order ? Anchor(order.Verb, order.Target, place, order.Position) : null;
        var isAfter = syntax.Order?.Keyword.Text == "after";
        foreach (var name in syntax.Targets)
        {
            if (items.Find<Joint>(name, "a joint", place) is not { } joint || (syntax.Order is not null && anchor is null))
            {
                continue;
            }

            var target = new RefitAnchor(Verb.Retorque, joint, place.At(name.Span));
            yield return later is not null
                ? new FollowUpRule(target, later, place.At(syntax.Span))
                : new RetorqueRule(target, needs, isAfter ? null : anchor, isAfter ? anchor : null, alerts, place.At(syntax.Span));
        }
    }

    /// <summary>A check, a record or a pause within the refit, or null where a name in it does not resolve, which is reported.</summary>
    public CheckRule? Check(CheckRuleSyntax syntax, ImmutableArray<Alert> alerts, BindingPlace place)
    {
        var text = AuthorText.Bind(syntax.Text, place, sink);
        var expect = QuantityBinder.Bind(syntax.Expect, place, sink);
        var needs = conditions.Needs(syntax.Needs, place);
        var (block, blockNeeds) = details.Bind(syntax.Instruments, syntax.Properties, place);
        var anchor = syntax.Order is { } order ? Anchor(order.Verb, order.Target, place, order.Position) : null;
        if ((syntax.Order is not null && anchor is null) || Verbs.Find(syntax.Verb.Text) is not { } verb)
        {
            return null;
        }

        var isAfter = syntax.Order?.Keyword.Text == "after";
        return new CheckRule(
            verb, text, expect, needs.AddRange(blockNeeds), isAfter ? null : anchor, isAfter ? anchor : null, [.. alerts, .. block.Alerts], place.At(syntax.Span))
        {
            Details = block,
        };
    }

    /// <summary>What may be open when an energy comes back, or null where a name in it does not resolve, which is reported.</summary>
    public OpenRule? Open(OpenRuleSyntax syntax, BindingPlace place)
    {
        var open = Open(syntax.While, place);
        if (items.Find<Energy>(syntax.Target, "an energy", place) is null)
        {
            return null;
        }

        return Anchor(syntax.Verb, syntax.Target, place) is { } action ? new OpenRule(action, open, place.At(syntax.Span)) : null;
    }

    /// <summary>A test, or null where the place of it does not resolve, which is reported.</summary>
    public TestRule? Test(TestRuleSyntax syntax, ImmutableArray<Alert> alerts, BindingPlace place, ImmutableArray<SourceSpan> calls)
    {
        var title = AuthorText.Bind(syntax.Text, place, sink);
        var powered = ImmutableArray.CreateBuilder<Energy>();
        var open = ImmutableArray.CreateBuilder<OpenItem>();
        var done = new StepList(sink);
        foreach (var item in syntax.Items)
        {
            switch (item)
            {
                case AlertSyntax alert:
                    done.Add(Alerts.Bind(alert, place, sink), place.Guards);
                    break;
                case TextActionSyntax text:
                    done.Add(steps.Text(text, place, calls));
                    break;
                case PowerSyntax power:
                    powered.AddRange(power.Energies.Select(name => items.Find<Energy>(name, "an energy", place)).OfType<Energy>());
                    break;
                case WhileSyntax clause:
                    open.AddRange(Open(clause, place));
                    break;
            }
        }

        var within = done.Close();
        var (isPowered, isDone) = (syntax.Items.Any(item => item is PowerSyntax), syntax.Items.Any(item => item is TextActionSyntax));
        if (!isPowered || !isDone)
        {
            // What is there and could not be understood has its own finding.
            sink.Report(MissingProperty.Test(title, isPowered, isDone, place.At(syntax.Text.Span)), place);
        }

        var anchor = syntax.Order is { } order ? Anchor(order.Verb, order.Target, place, order.Position) : null;
        if (syntax.Order is not null && anchor is null)
        {
            return null;
        }

        var isAfter = syntax.Order?.Keyword.Text == "after";
        return new TestRule(
            title,
            [.. powered.Distinct()],
            within,
            open.ToImmutable(),
            isAfter ? null : anchor,
            isAfter ? anchor : null,
            alerts,
            place.At(syntax.Span));
    }

    private ImmutableArray<OpenItem> Open(WhileSyntax clause, BindingPlace place)
    {
        var because = AuthorText.Bind(clause.Because, place, sink);
        var open = ImmutableArray.CreateBuilder<OpenItem>(clause.Open.Length);
        foreach (var name in clause.Open)
        {
            if (items.Find(name, place) is { } item)
            {
                if (item is Joint or Part)
                {
                    open.Add(new OpenItem(item, because, place.At(name.Span)));
                }
                else
                {
                    sink.Report(WrongSortOfItem.At(item.Name, ItemWords.Sort(item), "a joint or a part", place.At(name.Span), item.Declared), place);
                }
            }
        }

        return open.DrainToImmutable();
    }

    private RefitAnchor? Anchor(WordSyntax word, ReferenceSyntax target, BindingPlace place, WordSyntax? position = null)
    {
        var item = items.Find(target, place);
        if (Verbs.Find(word.Text) is not { } verb)
        {
            sink.Poison();
            return null;
        }

        if (item is null)
        {
            return null;
        }

        var anchor = new RefitAnchor(verb, item, place.At(word.Span.Cover((position ?? (SyntaxNode)target).Span)));
        if (position is null)
        {
            return anchor;
        }

        if (item is not Control control)
        {
            sink.Report(WrongSortOfItem.At(item.Name, ItemWords.Sort(item), "a control", place.At(target.Span), item.Declared), place);
            return null;
        }

        return Positions.Find(control, position, place, sink) is >= 0 and var at ? anchor with { Position = at } : null;
    }
}
