using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Rules.Names;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Properties;

/// <summary>The name behind a property that takes just one.</summary>
internal static class SingleReference
{
    /// <summary>The first name; more than one is a finding.</summary>
    public static ReferenceSyntax? Of(NamesPropertySyntax property, BindingPlace place, FindingSink sink)
    {
        if (property.Names.Length > 1)
        {
            var (first, second) = (place.At(property.Names[0].Span), place.At(property.Names[1].Span));
            sink.Report(PropertyTwice.Name(property.Keyword.Text, second, first), place);
        }

        return property.Names.IsEmpty ? null : property.Names[0];
    }
}
