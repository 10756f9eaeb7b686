using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Rules.Names;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Properties;

/// <summary>The properties of a block, each with its place: what stands in a <c>when</c> counts only where its test holds.</summary>
internal static class PropertyPlaces
{
    /// <summary>The properties that count in a variant; those for every variant where none is given, the guards of a place say for which.</summary>
    public static IEnumerable<(PropertySyntax Property, BindingPlace Place)> Of(
        ImmutableArray<MemberSyntax> members, BindingPlace place, OptionNames options, ulong? variant, FindingSink sink)
    {
        foreach (var member in members)
        {
            if (member is PropertySyntax property)
            {
                yield return (property, place);
            }
            else if (member is WhenSyntax branch && Unrolling.When(branch.Test, place, options, sink) is { } body && (variant is not { } one || body.Guards.Hold(one)))
            {
                foreach (var within in Of([.. branch.Body.Cast<MemberSyntax>()], body, options, variant, sink))
                {
                    yield return within;
                }
            }
        }
    }

    /// <summary>The properties of what belongs to no machine, and so has no options; a <c>when</c> among them is a finding.</summary>
    public static IEnumerable<PropertySyntax> OfCatalog(ImmutableArray<MemberSyntax> members, BindingPlace place, FindingSink sink)
    {
        foreach (var branch in members.OfType<WhenSyntax>())
        {
            sink.Report(PropertyNotHere.WhenInCatalog(branch, place), place);
        }

        return members.OfType<PropertySyntax>();
    }
}
