using System.Globalization;
using System.Text;
using ProcScript.Analysis.Crews;
using ProcScript.Analysis.Messages;
using ProcScript.Cards.Templating;

namespace ProcScript.Cards.Crews;

/// <summary>
/// Draws who does what when: a row for each person, a bar for each step, as long as it holds them. A long job goes on in further strips. It is lines
/// and numbers, so that it prints in black and white; the table beside it says the same in words.
/// </summary>
internal static class CrewDrawing
{
    private const double ShortestStrip = 600;
    private const int MostStrips = 8;
    private const int Left = 24;
    private const int Width = 720;
    private const int RowHeight = 22;
    private const int BarHeight = 18;
    private const int Head = 16;
    private const int Edge = 14;
    private const double LetterWidth = 7.2;

    // Of these the first that leaves no more than so many marks on a strip.
    private static readonly double[] Marks = [60, 120, 300, 600, 900, 1800, 3600, 7200, 14400, 28800, 86400];
    private const int MostMarks = 12;

    /// <summary>The strips, each an <c>svg</c> element; none where nobody does anything.</summary>
    public static IEnumerable<string> Strips(CrewPlan plan, Wordbook book)
    {
        var strips = Math.Min(MostStrips, (int)Math.Ceiling(plan.Seconds / ShortestStrip));
        for (var strip = 0; strip < strips; strip++)
        {
            yield return Strip(plan, book, plan.Seconds * strip / strips, plan.Seconds * (strip + 1) / strips);
        }
    }

    private static string Strip(CrewPlan plan, Wordbook book, double from, double to)
    {
        StringBuilder svg = new();
        var height = Head + (RowHeight * plan.People.Length) + 4;
        svg.Append(CultureInfo.InvariantCulture, $"<svg class=\"crew-time\" viewBox=\"0 0 {Width} {height}\" role=\"img\" aria-label=\"{Notation.Html.Escape(book.Say("crew.drawing", ("from", CrewClock.Of(from)), ("to", CrewClock.Of(to))))}\">\n");
        var apart = Marks.FirstOrDefault(mark => (to - from) / mark <= MostMarks, Marks[^1]);
        for (var mark = Math.Ceiling(from / apart) * apart; mark < to; mark += apart)
        {
            svg.Append(CultureInfo.InvariantCulture, $"<path class=\"crew-mark\" d=\"M{X(mark):0.#} {Head}V{height}\"/>\n");
            if (X(mark) < Width - Edge)
            {
                svg.Append(CultureInfo.InvariantCulture, $"<text class=\"crew-hour\" x=\"{X(mark):0.#}\" y=\"{Head - 4}\">{CrewClock.Of(mark)}</text>\n");
            }
        }

        foreach (var (row, person) in plan.People.Index())
        {
            var top = Head + (row * RowHeight) + 2;
            svg.Append(CultureInfo.InvariantCulture, $"<text class=\"crew-name\" x=\"2\" y=\"{top + 14}\">{person.Name}</text>\n");
            foreach (var step in plan.Steps.Where(step => step.Start < to && step.End > from))
            {
                Bar(svg, step, person.Name, top);
            }
        }

        return svg.Append("</svg>").ToString();

        double X(double time) => Left + ((Math.Clamp(time, from, to) - from) / (to - from) * (Width - Left - 2));

        void Bar(StringBuilder svg, CrewEntry step, string name, int top)
        {
            var (start, free, end) = (X(step.Start), X(step.Free), X(step.End));
            var does = step.People.Contains(name);
            if ((does || step.StandClear) && step.Free > from && step.Start < to)
            {
                svg.Append(CultureInfo.InvariantCulture, $"<rect class=\"{(does ? "crew-bar" : "crew-clear")}\" x=\"{start:0.#}\" y=\"{top}\" width=\"{Math.Max(1, free - start):0.#}\" height=\"{BarHeight}\"/>");
                var number = step.Step.ToString(CultureInfo.InvariantCulture);
                if (does && free - start >= (number.Length * LetterWidth) + 2)
                {
                    svg.Append(CultureInfo.InvariantCulture, $"<text class=\"crew-no\" x=\"{(start + free) / 2:0.#}\" y=\"{top + 13}\">{number}</text>");
                }

                svg.Append('\n');
            }

            if (does && step.End > Math.Max(step.Free, from))
            {
                svg.Append(CultureInfo.InvariantCulture, $"<path class=\"crew-runs\" d=\"M{free:0.#} {top + BarHeight}H{end:0.#}\"/>\n");
            }
        }
    }
}
