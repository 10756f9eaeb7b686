using ProcScript.Model.Binding.Places;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Binding.Quantities;

/// <summary>The units that an author works in.</summary>
internal static class UsedUnits
{
    /// <summary>The units of the declaration around a place, the most used first.</summary>
    public static IEnumerable<string> Around(TextSpan span, BindingPlace place) =>
        from declaration in place.File.Tree.Root.Declarations
        where declaration.Span.Touches(span.Start)
        from unit in declaration.DescendantsAndSelf().OfType<UnitSyntax>().GroupBy(unit => unit.Text, StringComparer.Ordinal)
        orderby unit.Count() descending
        select unit.Key;
}
