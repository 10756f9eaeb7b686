using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Machines;
using ProcScript.Model.Rules.Machines;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Machines;

/// <summary>Binds <c>hazard</c>.</summary>
internal static class HazardBinder
{
    /// <summary>The hazards named that <paramref name="known"/> does not have yet; a word that names none is a finding.</summary>
    public static ImmutableArray<Hazard> Added(
        ImmutableArray<Hazard> known, NamesPropertySyntax property, BindingPlace place, FindingSink sink)
    {
        foreach (var name in property.Names)
        {
            if (name.Name.IsMissing)
            {
                sink.Poison();
            }
            else if (name.Indices.IsEmpty && HazardWords.Find(name.Name.Text) is { } hazard)
            {
                known = known.Contains(hazard) ? known : known.Add(hazard);
            }
            else
            {
                var near = new NearNames(HazardWords.All).Find(name.Name.Text, sink);
                sink.Report(UnknownHazard.At(name.Written, near, place.At(name.Span)), place);
            }
        }

        return known;
    }
}
