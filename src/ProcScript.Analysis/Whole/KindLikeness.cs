using System.Globalization;
using System.Text;
using ProcScript.Model.Catalog;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Whole;

/// <summary>What makes two kinds of one sort alike.</summary>
internal static class KindLikeness
{
    /// <summary>All that is written of a kind but its name and its title; the same for kinds that are the same piece.</summary>
    public static string Properties(Kind kind)
    {
        object?[] all =
        [
            kind.Thread?.ToUpperInvariant(),
            Value(kind.Length),
            kind.Grade,
            kind.Drive?.Name,
            string.Join(',', kind.Tools.Select(tool => tool.Name)),
            kind.Torque?.Print(),
            kind.Pattern,
            kind.ThreadLocker,
            kind.Oiled,
            kind.Coating,
            Value(kind.Cure),
            string.Join(',', kind.Hazards),
            Value(kind.Spare),
            string.Join(',', kind.Uses.Select(use => $"{use.Supply.Name} {use.Amount.Print()}")),
            kind.Cap is { } cap ? $"{cap.Count} {cap.Tool.Name}" : null,
            kind.SingleUse,
            kind.Stretch,
            kind.Reuse is not null,
            kind.Prevailing?.Print(),
            kind.KeepInOrder,
            kind.Captive,
            kind.IsOnNone,
            kind.CarriesNone,
            kind.Release,
            kind.Engage,
            Value(kind.Time),
            string.Join(',', kind.Certificates.Select(one => one.Name)),
            string.Join(',', kind.Ppe),
        ];
        return string.Join('\n', all);
    }

    /// <summary>The letters and digits of the title, in one case; a multiplication sign is an x. Null for a title without any.</summary>
    public static string? Title(Kind kind)
    {
        var title = new StringBuilder(kind.Title.Length);
        foreach (var letter in kind.Title)
        {
            if (letter == '×')
            {
                title.Append('x');
            }
            else if (char.IsLetterOrDigit(letter))
            {
                title.Append(char.ToLowerInvariant(letter));
            }
        }

        return title.Length == 0 ? null : title.ToString();
    }

    private static string Value(Quantity? quantity) => quantity?.BaseValue.ToString("G6", CultureInfo.InvariantCulture) ?? "";
}
