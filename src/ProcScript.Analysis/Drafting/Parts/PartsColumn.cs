using System.Collections.Immutable;

namespace ProcScript.Analysis.Drafting.Parts;

/// <summary>What a column of a list of parts says.</summary>
internal enum PartsColumn
{
    /// <summary>What the part is called.</summary>
    Part,

    /// <summary>How many there are.</summary>
    Count,

    /// <summary>The part that it is inside.</summary>
    In,

    /// <summary>What holds it.</summary>
    HeldBy,

    /// <summary>The size or the thread of hardware.</summary>
    Size,

    /// <summary>The mass.</summary>
    Mass,

    /// <summary>The tightening torque.</summary>
    Torque,

    /// <summary>The tool.</summary>
    Tool,

    /// <summary>What is in the way of it.</summary>
    Behind,

    /// <summary>Anything else worth a word.</summary>
    Note,

    /// <summary>A number of the list's own.</summary>
    Number,

    /// <summary>Anything that has no place in the language, such as a supplier or a price.</summary>
    Other,
}

/// <summary>Recognises the headings of a list of parts.</summary>
public static class PartsColumns
{
    private static readonly ImmutableArray<(PartsColumn Column, ImmutableArray<string> Headings)> Known =
    [
        (PartsColumn.Part, ["part", "name", "description", "component", "title", "part name", "designation", "bezeichnung", "benennung", "désignation", "denominación", "nazwa"]),
        (PartsColumn.Count, ["count", "quantity", "qty", "pieces", "pcs", "number off", "no off", "amount", "each", "menge", "anzahl", "stück", "stk", "quantité", "cantidad", "ilość"]),
        (PartsColumn.In, ["in", "inside", "assembly", "parent", "belongs to", "part of", "sub assembly", "baugruppe"]),
        (PartsColumn.HeldBy, ["held by", "fastener", "fasteners", "fixing", "fixings", "fixed by", "hardware", "mounting", "befestigung"]),
        (PartsColumn.Size, ["size", "thread", "dimension", "dimensions", "gewinde", "größe", "abmessung"]),
        (PartsColumn.Mass, ["mass", "weight", "unit weight", "gewicht", "masse", "peso", "masa", "poids"]),
        (PartsColumn.Torque, ["torque", "tightening torque", "anzugsmoment", "drehmoment", "anziehdrehmoment"]),
        (PartsColumn.Tool, ["tool", "tools", "werkzeug"]),
        (PartsColumn.Behind, ["behind", "hidden by", "remove first"]),
        (PartsColumn.Note, ["note", "notes", "remark", "remarks", "comment", "comments", "info", "bemerkung", "bemerkungen", "anmerkung", "remarque", "observaciones", "uwagi"]),
        (PartsColumn.Number, ["no", "number", "item", "pos", "position", "ref", "reference", "part number", "part no", "order number", "part nr", "find no", "item no", "drawing no", "art nr", "artikelnummer", "teilenummer", "teile nr", "nr", "pos nr"]),
    ];

    /// <summary>Every heading that is known, the usual one of each column first.</summary>
    public static string All => string.Join("; ", Known.Select(known => string.Join(", ", known.Headings.Take(3))));

    /// <summary>The column of each heading, with the unit that stands in brackets behind it; of one that is not known the heading itself.</summary>
    /// <exception cref="PartsListException">A heading stands twice, or the part has none.</exception>
    internal static ImmutableArray<(PartsColumn Column, string Unit)> Of(ImmutableArray<string> headings)
    {
        var columns = ImmutableArray.CreateBuilder<(PartsColumn, string)>(headings.Length);
        foreach (var heading in headings)
        {
            var column = Of(heading) ?? (PartsColumn.Other, heading);
            if (column.Column is not (PartsColumn.Other or PartsColumn.Number) && columns.Any(one => one.Item1 == column.Column))
            {
                throw new PartsListException($"says \"{heading}\" and has another column that means the same; leave one of them.");
            }

            columns.Add(column);
        }

        return columns.Any(one => one.Item1 == PartsColumn.Part)
            ? columns.ToImmutable()
            : throw new PartsListException($"has no column that names the parts, such as \"part\" or \"description\"; there are: {All}.");
    }

    /// <summary>Whether a row is the one with the headings: one of its cells names the parts.</summary>
    public static bool IsHeadings(ImmutableArray<string> cells) => cells.Any(cell => Of(cell) is (PartsColumn.Part, _));

    private static (PartsColumn Column, string Unit)? Of(string heading)
    {
        var bracket = heading.IndexOfAny(['(', '[', '/']);
        var unit = bracket < 0 ? "" : heading[(bracket + 1)..].Trim(' ', ')', ']');
        var word = string.Join(' ', (bracket < 0 ? heading : heading[..bracket]).Replace('_', ' ').Replace('.', ' ').ToLowerInvariant().Split(' ', StringSplitOptions.RemoveEmptyEntries));
        foreach (var (column, headings) in Known)
        {
            if (headings.Contains(word))
            {
                return (column, unit);
            }
        }

        return null;
    }
}
