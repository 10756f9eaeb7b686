using System.Globalization;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Drafting.Notes;

/// <summary>Names tools as a catalog does: <c>13 mm socket</c> is <c>socket_13</c>.</summary>
internal static class NoteTools
{
    /// <summary>The name and what is known of a tool.</summary>
    public static (string Name, CatalogFacts Facts) Of(string words)
    {
        var parts = words.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var number = parts.FirstOrDefault(word => char.IsDigit(word[0]))?.TrimEnd('m', 'M');
        var isMetric = int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var size) && words.Contains("mm", StringComparison.OrdinalIgnoreCase);
        var kind = string.Join(' ', parts.Where(word => !char.IsDigit(word[0]) && !word.Equals("mm", StringComparison.OrdinalIgnoreCase)));
        var name = DraftWords.Name(isMetric ? $"{kind} {number}" : words);
        name = name.Length > 0 && NameText.IsName(name) ? name : (name + "_tool").TrimStart('_');
        return (name, new CatalogFacts(words, isMetric ? [string.Create(CultureInfo.InvariantCulture, $"size {size} mm")] : []));
    }
}
