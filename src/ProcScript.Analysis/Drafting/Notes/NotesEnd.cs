using System.Globalization;

namespace ProcScript.Analysis.Drafting.Notes;

/// <summary>What shows only when all notes are read: what hardware belongs to, and what the job is for.</summary>
/// <param name="steps">The steps, in the order of the notes.</param>
/// <param name="names">The items.</param>
internal sealed class NotesEnd(List<NoteStep> steps, NoteNames names)
{
    /// <summary>Hardware of which only the sort was said goes by the part that comes off next.</summary>
    public void NameTheRest()
    {
        var next = "";
        for (var at = steps.Count - 1; at >= 0; at--)
        {
            var step = steps[at];
            if (step.Verb is "remove" or "aside")
            {
                next = step.Item;
            }
            else if (step.Hardware.Length > 0)
            {
                var sort = ItemSorts.OfVerb(step.Verb) ?? ItemSort.Fastener;
                var titled = $"{(next.Length > 0 ? names.TitleOf(next) : "body")} {step.Hardware}";
                if (step.Amount > 0 && steps.Find(one => one.Pieces.Length > 0 && one.Item == DraftWords.Name(titled)) is { } other && other.Pieces.Split(' ')[0] != step.Amount.ToString(CultureInfo.InvariantCulture))
                {
                    // "Slacken the 2 bolts at the side" beside "undo the 8 dash bolts".
                    step.Question = string.Create(CultureInfo.InvariantCulture, $"are these {step.Amount} some of the {titled}, or others?");
                    step.Say($"how {DraftWords.Quoted(NotesReader.Told(step.Said))}");
                    step.Properties.RemoveAll(property => property.StartsWith("at ", StringComparison.Ordinal));
                    step.Amount = 0;
                }

                step.Item = names.Of(titled, sort);
                step.Hardware = "";
                foreach (var property in step.Properties.Where(property => property.Split(' ')[0] is "torque" or "at" or "release").ToList())
                {
                    names.Say(step.Item, property);
                    step.Properties.Remove(property);
                }

                if (step.Amount > 0)
                {
                    names.Count(step.Item, step.Amount);
                }

                if (next.Length > 0)
                {
                    names.Owns(next, step.Item);
                }
            }
        }
    }

    /// <summary>"Job: swap the rocker switch" says what all this is for, where no line does.</summary>
    /// <param name="job">What the job is called.</param>
    public void ReplaceWhatTheJobSays(string job)
    {
        if (steps.Exists(step => step.Phase == NotePhase.Work) || NoteVerbs.Of(job) is not (NoteAct.Replace, var words) || words.Length == 0)
        {
            return;
        }

        var name = DraftWords.Name(NoteObject.Bare(words));
        if (steps.FindLast(step => step.Verb == "remove" && (name == step.Item || name.EndsWith("_" + step.Item, StringComparison.Ordinal) || step.Item.EndsWith("_" + name, StringComparison.Ordinal))) is { } removed)
        {
            steps.Add(new NoteStep(NotePhase.Work, "replace") { Item = removed.Item });
        }
    }
}
