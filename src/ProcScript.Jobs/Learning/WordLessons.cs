using System.Collections.Immutable;
using ProcScript.Analysis.Following;
using ProcScript.Analysis.Mending;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Jobs.Learning;

/// <summary>What people told in words, and told again: tools that were missing, things that were needed, notes.</summary>
/// <param name="texts">The library.</param>
/// <param name="atLeast">How many jobs have to tell the same.</param>
internal sealed class WordLessons(CurrentTexts texts, int atLeast)
{
    private const string Tool = "tool";
    private const string Supply = "supply";
    private const string How = "how";

    /// <summary>What the catalog declares for joints.</summary>
    private static readonly ImmutableArray<string> Joints = ["fastener", "clip", "connector", "line", "bond"];

    /// <summary>The tools that were missing: each belongs to the step at which it was, or to the job.</summary>
    public IEnumerable<Lesson> Tools(IEnumerable<ToldWords> told) => Again(told.Select(one => one with { Text = Named(Tool, one)?.Name.Text ?? one.Text })).SelectMany(same =>
    {
        var (first, words) = (same[0], Thing(same));
        var entry = Named(Tool, first with { Text = words });
        if (entry is not null && IsListed(entry, first))
        {
            return [];
        }

        var lesson = Lesson(LessonSort.Tool, same, first.Step is { Line.Tools: { IsEmpty: false } tools } ? string.Join(", ", tools) : "no tool", $"{(entry is null ? words : Title(entry))}: missing");
        return (IEnumerable<Lesson>)
        [
            entry is null
                ? lesson with { Otherwise = $"The catalog has no such tool: declare it, `{Tool} … {TextQuotes.Quoted(words)}`, and name it at the step." }
                : With(lesson, first, Tool, string.Join(", ", (first.Step?.OwnTools ?? []).Append(entry.Name.Text))),
        ];
    });

    /// <summary>What else was needed: each belongs to the job.</summary>
    public IEnumerable<Lesson> Things(IEnumerable<ToldWords> told) => Again(told.Select(one => one with { Step = null })).SelectMany(same =>
    {
        var words = Thing(same);
        var count = (int)Math.Ceiling(Spread.MedianOf(same.GroupBy(one => one.Job, StringComparer.Ordinal).Select(job => (double)job.Sum(one => one.Count))));
        var lesson = Lesson(LessonSort.Supply, same, "on no list", $"{count} × {words} needed");
        if (Named(Supply, same[0] with { Text = words }) is { } supply)
        {
            return same[0].Procedure.Procedure.Details.Uses.Any(use => use.Supply.Name == supply.Name.Text) ? [] : [With(lesson, same[0], "uses", $"{count} of {supply.Name.Text}")];
        }

        return (IEnumerable<Lesson>)
        [
            lesson with
            {
                Otherwise = Joints.Select(kind => Named(kind, same[0] with { Text = words })).OfType<CatalogSyntax>().FirstOrDefault() is { } joint
                    ? $"The catalog has it for joints, `{joint.Name.Text}`: `job broke` and `job missing` with the item count for its spares."
                    : $"It is no item of the machine and no supply of the catalog: declare it, `{Supply} … {TextQuotes.Quoted(words)}`, and write `uses`.",
            },
        ];
    });

    /// <summary>The notes: each belongs to the step at which it was made. What the step says already is no news.</summary>
    public IEnumerable<Lesson> Notes(IEnumerable<ToldWords> told) => Again(told).SelectMany(same =>
    {
        var (first, words) = (same[0], NoteWords.Typical(same.Select(one => one.Text)));
        if (first.Step is { Line: var line } && line.How.Concat(line.Checks).Concat(line.Alerts.Select(alert => alert.Text)).Any(text => NoteWords.AreAlike(NoteWords.Of(text), NoteWords.Of(words))))
        {
            return [];
        }

        var lesson = Lesson(LessonSort.Note, same, "not said", $"{Quoted(words)}{Otherwise(same)}: noted {(same.Count == 1 ? "once" : $"{same.Count} times")}");
        return (IEnumerable<Lesson>)[first.Step is null ? lesson with { Otherwise = "The notes belong to no step: write it where it is of use." } : With(lesson, first, How, TextQuotes.Quoted(Sentence(words)))];
    });

    /// <summary>Whether the cards name a tool already: for the job, or at the step, with its size behind its title or without.</summary>
    private bool IsListed(CatalogSyntax tool, ToldWords told)
    {
        var title = Title(tool);
        return told.Procedure.Procedure.Details.Tools.Any(listed => listed.Name == tool.Name.Text)
            || told.Step?.Line.Tools.Any(listed => listed == title || (listed.StartsWith($"{title}, ", StringComparison.Ordinal) && texts.Catalog[Tool].All(other => Title(other.Entry) != listed))) == true;
    }

    /// <summary>What enough jobs tell alike of one place.</summary>
    private IEnumerable<List<ToldWords>> Again(IEnumerable<ToldWords> told) => told
        .OrderBy(one => one.Job, StringComparer.Ordinal).ThenBy(one => one.Text, StringComparer.Ordinal)
        .GroupBy(one => (one.Procedure.Procedure.Declared, one.Step?.Block, Step: one.Step?.Block is null ? one.Step?.Line.Text : null))
        // A step that two procedures share is one place.
        .GroupBy(place => place.Key.Block is { } block ? (block.Action, block.OfRefit, "") : (place.Key.Declared, false, place.Key.Step ?? ""))
        .SelectMany(place => NoteWords.Group(place.SelectMany(one => one), one => one.Text))
        .Where(same => same.Select(one => one.Job).Distinct(StringComparer.Ordinal).Count() >= atLeast);

    private static Lesson Lesson(LessonSort sort, List<ToldWords> same, string written, string observed)
    {
        ImmutableArray<string> jobs = [.. same.Select(one => one.Job).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        return new Lesson(
            sort, same[0].Step?.Block?.Action ?? same[0].Procedure.Procedure.Declared, same[0].Step?.Line.Text ?? same[0].Procedure.Procedure.Title, written, $"{observed} in {Learning.Lesson.CountOf(jobs.Length)}", jobs);
    }

    /// <summary>The lesson as a property of the step, or of the job where it belongs to none.</summary>
    private static Lesson With(Lesson lesson, ToldWords told, string keyword, string value) => told.Step switch
    {
        // What `strip` puts in says what other procedures say of it, until it says something itself.
        { Line.Derived: true } when keyword == How => lesson with { Otherwise = Elsewhere(keyword, value) },
        { Block: { } block } => lesson with { Change = new PropertyChange(block.Action, block.OfRefit, keyword, value) },
        null => lesson with { Change = new PropertyChange(told.Procedure.Procedure.Declared, false, keyword, value) },
        _ => lesson with { Otherwise = Elsewhere(keyword, value) },
    };

    private static string Elsewhere(string keyword, string value) => $"No line of the text is this step's alone: write `{keyword} {value}` where it belongs.";

    /// <summary>What the catalog has of a name, or by the words of its title; first what the procedure sees.</summary>
    private CatalogSyntax? Named(string keyword, ToldWords told)
    {
        var words = NoteWords.Of(told.Text);
        return texts.Catalog[keyword]
            .Where(one => one.Entry.Name.Text == told.Text.Trim() || NoteWords.Of(Title(one.Entry)).SetEquals(words))
            .OrderByDescending(one => told.Procedure.Procedure.Sees(one.Path))
            .ThenByDescending(one => one.Entry.Name.Text == told.Text.Trim())
            .Select(one => one.Entry)
            .FirstOrDefault();
    }

    private static string Title(CatalogSyntax entry) => entry.Title?.Value ?? entry.Name.Text.Replace('_', ' ');

    /// <summary>What a thing is called by most.</summary>
    private static string Thing(List<ToldWords> same) => NoteWords.Typical(same.Select(one => one.Text.Trim().TrimEnd('.', '!')));

    private static string Quoted(string words) => $"“{OnOneLine(words)}”";

    private static string Otherwise(List<ToldWords> same) =>
        same.Select(one => one.Text.Trim()).Distinct(StringComparer.Ordinal).Count() is > 1 and var ways ? $", in {ways} wordings" : "";

    private static string OnOneLine(string words) => string.Join(' ', words.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    /// <summary>A note as a sentence, on one line.</summary>
    private static string Sentence(string words)
    {
        var line = OnOneLine(words).Replace("{", "{{", StringComparison.Ordinal);
        return char.ToUpperInvariant(line[0]) + line[1..] + (line[^1] is '.' or '!' or '?' ? "" : ".");
    }
}

/// <summary>Words that somebody told, of a procedure as it is now.</summary>
/// <param name="Job">The job.</param>
/// <param name="Procedure">The procedure.</param>
/// <param name="Step">The step; null where they belong to none.</param>
/// <param name="Text">The words.</param>
/// <param name="Count">How many of it, where it is a thing.</param>
internal sealed record ToldWords(string Job, CurrentProcedure Procedure, CourseStep? Step, string Text, int Count);
