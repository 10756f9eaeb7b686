using System.Text;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Places;

/// <summary>The one spelling of a name with its index: <c>pillar_trim[left]</c>.</summary>
internal static class CanonicalName
{
    /// <summary>The name with the values of variables in its index; empty where a word is missing.</summary>
    public static string Of(ReferenceSyntax reference, Bindings bindings)
    {
        if (reference.Indices.IsEmpty || reference.Name.IsMissing)
        {
            return reference.Name.Text;
        }

        var name = new StringBuilder(reference.Name.Text).Append('[');
        for (var index = 0; index < reference.Indices.Length; index++)
        {
            var word = reference.Indices[index];
            if (word.IsMissing)
            {
                return "";
            }

            name.Append(index > 0 ? "," : "").Append(bindings.Find(word.Text)?.Value ?? word.Text);
        }

        return name.Append(']').ToString();
    }

    /// <summary>The name in words, for an item without a title: <c>pillar trim left</c>.</summary>
    public static string Words(string canonical) =>
        canonical.Replace('_', ' ').Replace('[', ' ').Replace(',', ' ').Replace("]", "", StringComparison.Ordinal);

    /// <summary>The name without its index.</summary>
    public static string Base(string canonical)
    {
        var bracket = canonical.IndexOf('[', StringComparison.Ordinal);
        return bracket < 0 ? canonical : canonical[..bracket];
    }
}
