using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Binding.Properties;
using ProcScript.Model.Binding.Quantities;
using ProcScript.Model.Machines;
using ProcScript.Model.Rules.Machines;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Machines;

/// <summary>Binds what only joints and covers say.</summary>
internal sealed class JointBinder(ItemLookup items, FindingSink sink)
{
    /// <summary>Binds one property of a joint.</summary>
    public void Property(Joint joint, PropertySyntax property, BindingPlace place)
    {
        switch (property)
        {
            case TextPropertySyntax text:
                var words = AuthorText.Bind(text.Text, place, sink);
                switch (text.Keyword.Text)
                {
                    case "at":
                        joint.At = words;
                        break;
                    case "release":
                        joint.Release = words;
                        break;
                    case "engage":
                        joint.Engage = words;
                        break;
                    case "reuse because":
                        joint.Reuse = words;
                        break;
                }

                break;
            case TorquePropertySyntax torque:
                joint.Torque = TorqueBinder.Bind(torque, place, sink);
                joint.TorqueDeclared = place.At(torque.Span);
                break;
            case ChoicePropertySyntax pattern:
                joint.Pattern = TorqueBinder.Pattern(pattern);
                break;
            case LimitPropertySyntax prevailing:
                joint.Prevailing = TorqueBinder.Prevailing(prevailing, place, sink);
                break;
            case FlagPropertySyntax flag:
                Flag(joint, flag.Keyword.Text);
                break;
            case NamesPropertySyntax none when items.SaysNone(none, place):
                None(joint, none.Keyword.Text);
                break;
            case NamesPropertySyntax { Keyword.Text: "renew with" } renew:
                joint.RenewWith = joint.RenewWith.AddRange(items.Disturbing(renew, place));
                break;
            case NamesPropertySyntax names when SingleReference.Of(names, place, sink) is { } name:
                End(joint, names, name, place);
                break;
        }
    }

    /// <summary>Takes down that an end has none; nobody need say that nothing disturbs a joint.</summary>
    private static void None(Joint joint, string keyword)
    {
        joint.IsOnNone |= keyword == "on";
        joint.CarriesNone |= keyword == "carries";
    }

    private static void Flag(Joint joint, string keyword)
    {
        switch (keyword)
        {
            case "oiled":
                joint.Oiled = true;
                break;
            case "stretch":
                joint.Stretch = true;
                break;
            case "signed":
                joint.Signed = true;
                break;
            default:
                joint.ThreadLocker = true;
                break;
        }
    }

    private void End(Joint joint, NamesPropertySyntax property, ReferenceSyntax name, BindingPlace place)
    {
        switch (property.Keyword.Text)
        {
            case "to" when items.Find<Part>(name, "a part", place) is { } part:
                if (part == joint.Owner)
                {
                    sink.Report(TiedToItself.At(joint, place.At(name.Span)), place);
                }
                else
                {
                    joint.Other = part;
                }

                break;
            case "on":
                joint.On = items.Find<Energy>(name, "an energy", place);
                joint.IsOnNone = false;
                break;
            case "carries":
                joint.Carries = items.Find<Fluid>(name, "a fluid", place);
                joint.CarriesNone = false;
                break;
        }
    }
}
