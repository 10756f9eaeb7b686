using System.Text;
using ProcScript.Model.Binding.Places;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Names;

/// <summary>The one spelling of a name with its index: <c>pillar_trim[front,left]</c>, where sources have a blank behind the comma.</summary>
public static class CanonicalName
{
    /// <summary>The name with the values of variables in its index; empty where a word is missing.</summary>
    internal static string Of(ReferenceSyntax reference, Bindings bindings)
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

    /// <summary>The name with an index; the bare name where there is none.</summary>
    public static string Of(string name, IEnumerable<string> indices) => string.Join(',', indices) is { Length: > 0 } index ? $"{name}[{index}]" : name;

    /// <summary>The name in words, for an item without a title: <c>pillar trim left</c>.</summary>
    internal static string Words(string canonical) =>
        canonical.Replace('_', ' ').Replace('[', ' ').Replace(',', ' ').Replace("]", "", StringComparison.Ordinal);

    /// <summary>The name without its index.</summary>
    public static string Base(string canonical)
    {
        var bracket = canonical.IndexOf('[', StringComparison.Ordinal);
        return bracket < 0 ? canonical : canonical[..bracket];
    }

    /// <summary>The values of the index, in order; none where there is no index.</summary>
    public static string[] Indices(string canonical)
    {
        var name = Base(canonical);
        return name.Length == canonical.Length ? [] : canonical[(name.Length + 1)..].TrimEnd(']').Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
    }

    /// <summary>A name with an index, as sources have it; the bare name where there is no index.</summary>
    public static string Written(string name, IReadOnlyCollection<string> indices) => indices.Count == 0 ? name : $"{name}[{string.Join(", ", indices)}]";

    /// <summary>A name with its index as sources have it.</summary>
    public static string Written(string canonical) => Written(Base(canonical), Indices(canonical));
}
