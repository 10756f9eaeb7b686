using System.Globalization;
using System.Text;
using ProcScript.Analysis.Messages;

namespace ProcScript.Cards.Figures;

/// <summary>Draws the order in which the fasteners of a joint are tightened: a numbered circle for each, black on white.</summary>
internal static class TighteningDrawing
{
    // More numbers than that cannot be read in a drawing of a card's size.
    private const int Most = 40;

    private const int Fastener = 11;
    private const int Apart = 28;
    private const int Margin = 14;

    /// <summary>The drawing as one <c>svg</c> element; empty where the order is no matter of drawing, or of too many.</summary>
    /// <param name="pattern">The word for the order, as a plan has it.</param>
    /// <param name="count">How many they are.</param>
    /// <param name="book">The language; English where none is given.</param>
    public static string Svg(string pattern, int count, Wordbook? book = null) => count is < 3 or > Most ? "" : pattern switch
    {
        "star" => Circle(count, book ?? Wordbook.English),
        "inside out" => Rows(count, book ?? Wordbook.English),
        _ => "",
    };

    private static string Circle(int count, Wordbook book)
    {
        var order = TighteningOrder.Star(count);
        var radius = Math.Max(30, Apart * count / (2 * Math.PI));
        var middle = radius + Margin;
        List<(double X, double Y)> places =
        [
            .. order.Select(place => (middle + (radius * Math.Sin(2 * Math.PI * place / count)), middle - (radius * Math.Cos(2 * Math.PI * place / count)))),
        ];
        var ring = string.Create(CultureInfo.InvariantCulture, $"<circle class=\"rim\" cx=\"{middle:0.#}\" cy=\"{middle:0.#}\" r=\"{radius:0.#}\"/>");
        return Drawn(2 * middle, 2 * middle, ring, places, book.Say("pattern.star-words", ("count", count), ("order", Words(order))));
    }

    private static string Rows(int count, Wordbook book)
    {
        var order = TighteningOrder.InsideOut(count);
        var rows = TighteningOrder.RowsOf(count);
        List<(double X, double Y)> places = [.. order.Select(place => (Margin + ((double)place.Column * Apart), Margin + (place.Row * Apart * 1.4)))];
        var (width, height) = ((count / rows) - 1) is var gaps ? ((gaps * Apart) + (2.0 * Margin), ((rows - 1) * Apart * 1.4) + (2 * Margin)) : default;
        var words = rows == 1
            ? book.Say("pattern.row-words", ("count", count), ("order", Words([.. order.Select(place => place.Column)])))
            : book.Say("pattern.rows-words", ("count", count), ("order", Words([.. order.Select(place => (place.Row * (count / 2)) + place.Column)])));
        return Drawn(width, height, "", places, words);
    }

    private static string Drawn(double width, double height, string below, List<(double X, double Y)> places, string words)
    {
        StringBuilder svg = new();
        svg.Append(CultureInfo.InvariantCulture, $"<svg class=\"order\" viewBox=\"0 0 {width:0.#} {height:0.#}\" width=\"{width:0.#}\" height=\"{height:0.#}\" role=\"img\" aria-label=\"{words}\">{below}");
        for (var turn = 0; turn < places.Count; turn++)
        {
            var (x, y) = places[turn];
            svg.Append(CultureInfo.InvariantCulture, $"<circle cx=\"{x:0.#}\" cy=\"{y:0.#}\" r=\"{Fastener}\"/><text x=\"{x:0.#}\" y=\"{y + 4.5:0.#}\">{turn + 1}</text>");
        }

        return svg.Append("</svg>").ToString();
    }

    private static string Words(IReadOnlyList<int> order) => string.Join(", ", order.Select(place => Number(place + 1)));

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
