using ProcScript.Model.Binding.Places;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Procedures;

/// <summary>Joins what a procedure and those that it calls say of the whole job.</summary>
internal static class ProcedureDetails
{
    /// <summary>
    /// The properties of each procedure bound by themselves, then joined: the most people, and every certificate, tool, supply and protection once.
    /// </summary>
    public static ActionDetails Bind(IReadOnlyList<PropertySyntaxAt> properties, DetailsBinder binder)
    {
        var joined = ActionDetails.None;
        foreach (var procedure in properties.GroupBy(property => property.Frame))
        {
            var own = binder.Bind(procedure.Select(property => (property.Property, property.Place)));
            joined = joined with
            {
                People = Math.Max(joined.People, own.People),
                Certificates = [.. joined.Certificates.Union(own.Certificates)],
                Ppe = [.. joined.Ppe.Union(own.Ppe)],
                Tools = [.. joined.Tools.Union(own.Tools)],
                Uses = [.. joined.Uses, .. own.Uses],
            };
        }

        return joined;
    }
}

/// <summary>A property of a procedure with its place.</summary>
/// <param name="Property">The property.</param>
/// <param name="Place">Where it stands.</param>
/// <param name="Frame">The procedure that says it.</param>
internal readonly record struct PropertySyntaxAt(PropertySyntax Property, BindingPlace Place, CallFrame Frame);
