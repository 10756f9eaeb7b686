using System.Collections.Frozen;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Bags;

/// <summary>
/// The side of the machine that hardware is from, by the words of its place, its index and the parts that it is in. The words of English, German,
/// French, Spanish and Polish are known.
/// </summary>
internal static class HardwareSide
{
    private const string Left = "left";
    private const string Right = "right";

    private static readonly FrozenSet<string> LeftWords = FrozenSet.Create(
        StringComparer.OrdinalIgnoreCase, Left, "links", "linke", "linker", "linken", "linkes", "gauche", "izquierda", "izquierdo", "lewy", "lewa", "lewe");

    private static readonly FrozenSet<string> RightWords = FrozenSet.Create(
        StringComparer.OrdinalIgnoreCase, Right, "rechts", "rechte", "rechter", "rechten", "rechtes", "droite", "droit", "derecha", "derecho", "prawy", "prawa", "prawe");

    private static readonly char[] Separators = [' ', ',', ';', '.', ':', '(', ')', '[', ']', '_', '/'];

    /// <summary><c>left</c> or <c>right</c>; empty where nothing says it, or both.</summary>
    public static string Of(Joint joint)
    {
        foreach (var words in Words(joint))
        {
            var sides = words.Split(Separators, StringSplitOptions.RemoveEmptyEntries).Select(Side).OfType<string>().Distinct().ToList();
            if (sides.Count > 0)
            {
                return sides is [var side] ? side : "";
            }
        }

        return "";
    }

    private static string? Side(string word) => LeftWords.Contains(word) ? Left : RightWords.Contains(word) ? Right : null;

    /// <summary>What says it, the nearest first.</summary>
    private static IEnumerable<string> Words(Joint joint)
    {
        yield return $"{joint.At} {joint.Name}";
        if (joint.Over is { } over)
        {
            yield return $"{over.At} {over.Name}";
        }

        for (var part = joint.Owner; part is not null; part = part.Parent)
        {
            yield return $"{part.Title} {part.Name}";
        }
    }
}
