using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Binding.Quantities;
using ProcScript.Model.Machines;
using ProcScript.Model.Rules.Machines;
using ProcScript.Model.Rules.Names;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Machines;

/// <summary>Binds what only parts say.</summary>
internal sealed class PartBinder(ItemLookup items, ConditionBinder conditions, FindingSink sink)
{
    /// <summary>Binds one property of a part.</summary>
    public void Property(Part part, PropertySyntax property, BindingPlace place)
    {
        switch (property)
        {
            case QuantityPropertySyntax { Keyword.Text: "mass" } mass:
                part.Mass = QuantityBinder.Bind(mass.Quantity, QuantityDemand.Of("mass"), place, sink);
                break;
            case UnknownPropertySyntax unknown:
                part.MassUnknown = AuthorText.Bind(unknown.Because, place, sink);
                break;
            case NamesPropertySyntax renew when items.SaysNone(renew, place):
                part.RenewsWithNone = true;
                break;
            case NamesPropertySyntax renew:
                part.RenewWith = part.RenewWith.AddRange(items.Disturbing(renew, place));
                break;
            case NeedsPropertySyntax way:
                part.WayOut = part.WayOut.AddRange(conditions.Needs(way, place, part));
                break;
            case FlagPropertySyntax { Keyword.Text: "hoist" }:
                part.Hoist = true;
                break;
            case FlagPropertySyntax { Keyword.Text: "temporary" }:
                part.IsTemporary = true;
                break;
            case FlagPropertySyntax:
                part.SingleUse = true;
                break;
            default:
                part.Lift = LiftBinder.With(part.Lift, property, place, sink) ?? part.Lift;
                break;
        }
    }

    /// <summary>Binds the way aside; the second one of a part is a finding.</summary>
    public void Aside(Part part, AsideSyntax aside, ref AsideSyntax? first, BindingPlace place)
    {
        if (first is not null)
        {
            sink.Report(PropertyTwice.At("aside", place.At(aside.Span), place.At(first.Span), place.At(aside.Span)), place);
            return;
        }

        first = aside;
        var bound = ConditionBinder.Joined(
            aside.Needs,
            need => need is { State: null, Position: null } ? Freed(part, need, place) : conditions.Need(need, NeedsPhase.Both, place),
            place,
            part);
        var named = aside.Needs.Where(need => need is { State: null, Position: null }).Select(need => place.At(need.Span)).ToHashSet();
        var joints = bound.Where(condition => condition.State == NeededState.Slack && named.Contains(condition.Declared)).ToImmutableArray();
        part.Aside = new AsideWay(
            aside.How is { } how ? AuthorText.Bind(how, place, sink) : null,
            [.. joints.Select(condition => (Joint)condition.Item)],
            bound.RemoveRange(joints),
            place.At(aside.Span));
    }

    /// <summary>A joint that the way aside names, off or slack; null with a finding where it is none.</summary>
    private Condition? Freed(Part part, NeedSyntax need, BindingPlace place)
    {
        if (items.Find<Joint>(need.Item, "a joint", place) is not { } joint)
        {
            return null;
        }

        if (!Ties(joint, part))
        {
            sink.Report(AsideNamesForeignJoint.At(part, joint, place.At(need.Item.Span)), place);
        }

        return new Condition(joint, NeededState.Slack, -1, NeedsPhase.Both, place.At(need.Span));
    }

    /// <summary>Whether an end of the joint, or of the joint that the cover hides, lies in the part.</summary>
    private static bool Ties(Joint joint, Part part)
    {
        while (joint.Over is { } hidden)
        {
            joint = hidden;
        }

        return joint.Owner.IsWithin(part) || (joint.Other?.IsWithin(part) ?? false);
    }
}
