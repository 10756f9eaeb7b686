using System.Globalization;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans;

namespace ProcScript.Cards.Templating;

/// <summary>Messages that lead to another card.</summary>
/// <param name="book">The language.</param>
/// <param name="notation">The form of the document.</param>
/// <param name="plan">The plan.</param>
internal sealed class MessageLinks(Wordbook book, Notation notation, Plan plan)
{
    /// <summary>The mark of a line that is usual.</summary>
    public Markup Usual => new(notation == Notation.Html ? $"<span class=\"usual\">{notation.Escape(book.Say("alert.usual"))}</span>" : book.Say("alert.usual"));

    /// <summary>Where an energy is made safe, by its number among the energies of the job.</summary>
    public Markup Energy(int number) => Link(
        $"energy-{Digits(number)}",
        "step.make-safe-card",
        new Dictionary<string, object> { ["number"] = Digits(number), ["energy"] = plan.Energies[number - 1].Title });

    /// <summary>Where the job is handed over, by the step at which it stops.</summary>
    public Markup HandOver(int step) => Link($"hand-over-{Digits(step)}", "step.over-card", new Dictionary<string, object> { ["step"] = Digits(step) });

    private static string Digits(int number) => number.ToString(CultureInfo.InvariantCulture);

    private Markup Link(string place, string key, Dictionary<string, object> values)
    {
        var words = MessageMarkup.Of(book, key, notation, values);
        return new Markup(notation == Notation.Html ? $"<a href=\"#{place}\">{words}</a>" : $"[{words}](#{place})");
    }
}
