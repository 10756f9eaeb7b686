using System.Collections.Frozen;
using System.Globalization;
using System.Text.RegularExpressions;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Drafting.Notes;

/// <summary>
/// Sees to it that nothing of notes is lost: what a sentence says and its steps do not stands at the step as <c>how</c>, or before it as a
/// comment with its line.
/// </summary>
internal static partial class NoteRest
{
    /// <summary>Words that only lead on, or hold a sentence together: a step says as much without them.</summary>
    private static readonly FrozenSet<string> Empty = new[]
    {
        "the", "a", "an", "and", "then", "next", "now", "first", "finally", "also", "please", "you", "can", "may", "to", "of", "from", "on", "in", "at", "with", "using", "use", "it",
        "its", "them", "is", "are", "be", "by", "for", "off", "out", "up", "down", "away", "this", "that", "these", "those", "there", "all", "each", "your", "s", "t", "hold", "holds",
        "holding", "securing", "retaining", "which", "nr", "no", "qty", "quantity", "pcs", "x", "step", "their", "any", "size", "about", "approx", "abt", "other", "w",
        "torque", "refit", "refitting", "reassembly", "assembly", "weight", "weighs", "bit", "or", "old", "hex", "clear", "nb", "note", "notice", "warning", "caution", "danger", "if",
    }.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    /// <summary>Verbs that tell how, where the verb of the language tells what.</summary>
    private static readonly FrozenSet<string> Manners = new[]
    {
        "slide", "press", "prise", "pry", "knock", "drive", "twist", "squeeze", "tap", "lever", "spin", "push", "flip", "swing", "fold", "tilt", "hinge", "jack", "sling",
        "screw", "blow", "brush", "wipe", "wash", "degrease", "siphon", "pump", "plug", "power", "run", "try",
    }.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    private static readonly FrozenSet<string> Verbs = NoteVerbs.FirstWords.Except(Manners, StringComparer.OrdinalIgnoreCase).ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    // The language writes units its own way.
    private static readonly FrozenSet<string> Units = new[]
    {
        "nm", "n", "m", "mm", "kg", "kgs", "l", "ltr", "litre", "litres", "liter", "liters", "ml", "v", "volt", "volts", "min", "mins", "minute", "minutes", "sec", "secs", "second", "seconds",
        "hour", "hours", "h", "lb", "lbs", "lbf", "ft", "qt", "gal", "man", "men", "person", "persons", "people", "helper", "mate", "assistant", "colleague", "deg", "degrees",
    }.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    /// <summary>Keeps what the steps of a sentence do not say.</summary>
    /// <param name="reader">The notes, read so far.</param>
    /// <param name="said">The sentence.</param>
    /// <param name="line">Its line in the notes.</param>
    /// <param name="before">How many steps there were before it.</param>
    public static void Keep(NotesReader reader, string said, int line, int before)
    {
        // A sentence may add to the step before it, too.
        var steps = reader.Steps.Skip(Math.Min(before - 1, reader.Steps.Count - 2)).ToList();
        var landed = steps.SelectMany(step => Words(Landed(reader, step))).ToHashSet(StringComparer.OrdinalIgnoreCase);
        if (steps.Exists(step => step.Verb == "replace"))
        {
            landed.Add("new");
        }

        if (Telling(said).All(landed.Contains))
        {
            return;
        }

        // What opened a lock may have become part of the last step, so that there are no more of them than before.
        var own = reader.Steps.Skip(Math.Min(before, reader.Steps.Count - 1)).LastOrDefault(step => step.Verb.Length > 0);
        var how = $"how {DraftWords.Quoted(NotesReader.Told(said))}";
        if (own is not null && own.Said == said)
        {
            own.Say(how);
        }
        else if (own is not null)
        {
            // What its own sentence says stays.
            own.Properties.Add(how);
        }
        else
        {
            reader.Remark(string.Create(CultureInfo.InvariantCulture, $"line {line}: {said}"));
        }
    }

    /// <summary>Whether words say something by themselves: one word seldom does.</summary>
    public static bool Tells(string words) => Words(words).Where(IsTelling).Where(word => !char.IsDigit(word[0]) && ItemSorts.OfWord(word) is null).Skip(1).Any();

    /// <summary>The words of a sentence that have to land somewhere, each of one: <c>bolts</c> is <c>bolt</c>.</summary>
    public static IEnumerable<string> Telling(string said) => Words(said).Where(IsTelling);

    /// <summary>The words and numbers of a text, likewise.</summary>
    public static IEnumerable<string> Words(string text) => Word().Matches(text).Select(match => match.Value.ToLowerInvariant()).Select(word => word switch
    {
        "both" => "2",
        "single" => "1",
        _ when NumberWords.Of(word) is { } number => number.ToString(CultureInfo.InvariantCulture),
        _ => DraftWords.Singular(word),
    });

    private static bool IsTelling(string word) => !Empty.Contains(word) && !Units.Contains(word) && !Verbs.Contains(word);

    private static string Landed(NotesReader reader, NoteStep step) => string.Join(
        ' ',
        reader.Names.SaidOf(step.Item)
            .Concat([step.Written(), step.Hardware, step.Amount.ToString(CultureInfo.InvariantCulture), step.Heading, step.Question])
            .Concat(step.Remarks)
            .Concat(step.Properties.Where(property => property.StartsWith("tool ", StringComparison.Ordinal)).Select(property => reader.ToolTitle(property["tool ".Length..]))));

    [GeneratedRegex(@"\d+|\p{L}+", RegexOptions.CultureInvariant)]
    private static partial Regex Word();
}
