using System.Globalization;
using System.Text;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Drafting.Notes;

/// <summary>Writes the steps that were read from notes as a procedure, with its stages, its work and its refit.</summary>
/// <param name="reader">The notes, read.</param>
/// <param name="machine">The name of the machine.</param>
/// <param name="source">What the notes are called.</param>
internal sealed class NotesText(NotesReader reader, string machine, string source)
{
    // A card that goes on is one bout of work; beyond so many steps a new one begins where a part is off.
    private const int FullStage = 4;

    private readonly StringBuilder _text = new();

    /// <summary>Writes it.</summary>
    public string Write()
    {
        var steps = reader.Steps;
        var goal = Goal(steps);
        var title = reader.Job.Length > 0 ? reader.Job : goal is var (work, part) && part.Length > 0 ? $"{DraftWords.Capital(work)} the {reader.Names.TitleOf(part)}" : "Strip";
        _text.Append(CultureInfo.InvariantCulture, $"// Made from {source}: read it against the machine.\n");
        _text.Append(CultureInfo.InvariantCulture, $"procedure {Name(title)} {DraftWords.Quoted(title)} on {machine} {{\n");
        if (goal.Part.Length > 0)
        {
            _text.Append(CultureInfo.InvariantCulture, $"goal {goal.Verb} {goal.Part}\n");
        }

        foreach (var stage in Stages(steps.Where(step => step.Phase == NotePhase.Strip)))
        {
            Block($"stage {DraftWords.Quoted(Title(stage))}", stage);
        }

        Block("work", Work(steps));
        Block("refit", [.. steps.Where(step => step.Phase == NotePhase.Refit)]);
        return _text.Append("}\n").ToString();
    }

    private void Block(string head, IReadOnlyList<NoteStep> steps)
    {
        if (steps.Count == 0)
        {
            return;
        }

        _text.Append(CultureInfo.InvariantCulture, $"{head} {{\n");
        foreach (var step in steps)
        {
            foreach (var remark in step.Remarks)
            {
                _text.Append(CultureInfo.InvariantCulture, $"// {remark}\n");
            }

            _text.Append(step.Written());
            _text.Append(step.Question.Length == 0 ? "\n" : $"  {DraftWriter.Question(step.Question)}\n");
        }

        // An alert speaks of the step behind it.
        if (steps.LastOrDefault(step => !step.Text.StartsWith("//", StringComparison.Ordinal)) is { Verb: "" } last && last.Text.Split(' ')[0] is "danger" or "warning" or "caution" or "notice")
        {
            _text.Append(head == "refit" ? "check \"All is as it was.\"\n" : "task \"Mind this on what follows.\"\n");
        }

        _text.Append("}\n");
    }

    /// <summary>The job is what is replaced or otherwise worked on; else what comes off last.</summary>
    private static (string Verb, string Part) Goal(IReadOnlyList<NoteStep> steps) =>
        steps.FirstOrDefault(step => step.Phase == NotePhase.Work && step.Verb == "replace") is { } replaced ? ("replace", replaced.Item)
        : steps.FirstOrDefault(step => step.Phase == NotePhase.Work && step.Verb.Length > 0 && (step.Verb != "clean" || !steps.Any(one => one.Verb == "remove"))) is { } worked ? (worked.Verb, worked.Item)
        : steps.LastOrDefault(step => step.Verb == "remove") is { } removed ? ("remove", removed.Item)
        : ("", "");

    private static List<NoteStep> Work(IReadOnlyList<NoteStep> steps) => [.. steps.Where(step => step.Phase == NotePhase.Work)];

    /// <summary>Headings begin a stage; without any, what makes safe is one, and a new one begins where a part is off and the card is full.</summary>
    private static List<List<NoteStep>> Stages(IEnumerable<NoteStep> steps)
    {
        var stages = new List<List<NoteStep>>();
        foreach (var step in steps)
        {
            var stage = stages.LastOrDefault();
            if (stage is null || step.Heading.Length > 0 || IsFull(stage) || (IsSafety(stage) && !IsSafety([step])))
            {
                stages.Add(stage = []);
            }

            stage.Add(step);
        }

        return stages;
    }

    private static bool IsFull(List<NoteStep> stage) => stage.Count >= FullStage && stage[^1].Verb is "remove" or "aside" && stage[0].Heading.Length == 0;

    private static bool IsSafety(IReadOnlyList<NoteStep> stage) => stage[0].Heading.Length == 0 && stage.All(step => step.Verb is "isolate" or "empty");

    private string Title(List<NoteStep> stage)
    {
        if (stage[0].Heading.Length > 0)
        {
            return stage[0].Heading;
        }

        var parts = stage.Where(step => step.Verb is "remove" or "aside").Select(step => reader.Names.TitleOf(step.Item)).Distinct(StringComparer.Ordinal).ToList();
        return DraftWords.Capital(parts switch
        {
            [] => IsSafety(stage) ? "make safe" : "get ready",
            [var one] => one,
            _ => $"{string.Join(", ", parts.SkipLast(1))} and {parts[^1]}",
        });
    }

    private string Name(string title)
    {
        var words = title.Split(' ', StringSplitOptions.RemoveEmptyEntries).Where(word => word.ToLowerInvariant() is not ("the" or "a" or "an"));
        var name = DraftWords.Name(string.Join(' ', words));
        name = name.Length == 0 ? "job" : name;
        return name == machine || !NameText.IsName(name) ? name + "_job" : name;
    }
}
