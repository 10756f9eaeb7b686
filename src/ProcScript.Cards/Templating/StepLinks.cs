using System.Collections;
using System.Globalization;
using System.Text.RegularExpressions;
using ProcScript.Cards.Words;

namespace ProcScript.Cards.Templating;

/// <summary>Numbers of steps that lead to the steps.</summary>
/// <param name="notation">The form of the document.</param>
internal sealed class StepLinks(Notation notation)
{
    // A step, and steps, in the languages of a pack.
    private const string Named = "(?:[Ss]teps?|[Ss]chritt(?:e|en|s)?|[ÉéEe]tapes?|[Pp]asos?|[Kk]rok(?:i|u|iem|ów|ach|ami)?)";

    /// <summary>The number of a step.</summary>
    public Markup Number(int step) => new(Link(step));

    /// <summary>Numbers of steps, ascending, with runs drawn together.</summary>
    public Markup Numbers(IEnumerable steps) => new(StepNumbers.InWords(Whole(steps), Link));

    /// <summary>
    /// A text that names steps by their numbers, alone or in a list. Each leads there where it stands first.
    /// </summary>
    public Markup In(object text, IEnumerable steps)
    {
        var written = text is Markup markup ? markup.Text : notation.Escape((string)text);
        // From the highest on: in a list, the one before a number is not a link yet.
        foreach (var step in Whole(steps).Where(step => step > 0).Distinct().OrderDescending())
        {
            var number = step.ToString(CultureInfo.InvariantCulture);
            var named = new Regex($@"(?<=\b{Named}[ \u00a0](?:\d+(?:, | \p{{L}}+ ))*){number}(?!\w|[.,]\d)", RegexOptions.CultureInvariant);
            written = named.Replace(written, Link(step), 1);
        }

        return new Markup(written);
    }

    private static IEnumerable<int> Whole(IEnumerable steps) => steps.Cast<object>().Select(step => Convert.ToInt32(step, CultureInfo.InvariantCulture));

    private string Link(int step) => notation == Notation.Markdown
        ? string.Create(CultureInfo.InvariantCulture, $"[{step}](#step-{step})")
        : string.Create(CultureInfo.InvariantCulture, $"<a href=\"#step-{step}\">{step}</a>");
}
