using System.Collections.Immutable;
using ProcScript.Analysis.Following;
using ProcScript.Analysis.Plans;
using ProcScript.Cards.Prose;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Replays;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Floor.Documents;

/// <summary>Makes the cards for a tablet.</summary>
internal static class PageCardsOf
{
    /// <summary>The cards of a course.</summary>
    /// <param name="course">The course.</param>
    /// <param name="head">What job it is.</param>
    public static PageCards Course(JobCourse course, JobHead head)
    {
        var plan = course.Plan;
        var turns = plan.Energies.SelectMany(energy => energy.Turns.Select(turn => (turn.Step, Turn: new PageTurn(energy.Name, turn.State)))).ToLookup(turn => turn.Step, turn => turn.Turn);
        return new PageCards
        {
            Revision = plan.Revision,
            Language = plan.Language,
            Title = head.Title,
            Machine = head.MachineTitle,
            Serial = head.Serial,
            Order = head.Order,
            With = head.With,
            Alerts = Alerts(plan.Alerts),
            Hazards = plan.Hazards,
            Licensed = plan.Licensed,
            Ppe = plan.JobPpe,
            Energies =
            [
                .. plan.Energies.Select(energy => new PageEnergy(
                    energy.Name, energy.Title, [.. energy.MakeSafe.Select(line => ProseHtml.Render(line.Text))], ProseHtml.Render(energy.Verify), energy.Limits, ProseHtml.Render(energy.Restore))),
            ],
            Cards = Cards(course, turns),
            Bags = plan.Bags,
            Items = [.. Items(course.Machine)],
        };
    }

    /// <summary>Steps one after the other that stand on one card.</summary>
    private static ImmutableArray<PageCard> Cards(JobCourse course, ILookup<int, PageTurn> turns)
    {
        var cards = new List<(string Title, CoursePhase Phase, List<PageStep> Steps)>();
        foreach (var step in course.Steps)
        {
            if (cards is not [.., var last] || last.Title != step.Card || last.Phase != step.Phase)
            {
                cards.Add((step.Card, step.Phase, []));
            }

            cards[^1].Steps.Add(Step(step, course.Plan, [.. turns[step.Number]]));
        }

        return [.. cards.Select(card => new PageCard(card.Title, card.Phase.ToString().ToLowerInvariant(), [.. card.Steps]))];
    }

    private static PageStep Step(CourseStep step, Plan plan, ImmutableArray<PageTurn> turns)
    {
        var line = step.Line;
        return new PageStep
        {
            Number = step.Number,
            Text = line.Text,
            Where = line.Where,
            Item = line.Item,
            Count = step.Count,
            Alerts = Alerts(line.Alerts),
            Safe = [.. Safety(line, plan).Where(safety => safety.Text.Length > 0).Select(safety => new PageSafety(safety.Action, ProseHtml.Render(safety.Text), safety.IsUsual))],
            How = [.. line.How.Select(ProseHtml.Render)],
            Before = [.. line.Photos.Select(photo => new PageFact("photo", photo)), .. line.Marks.Select(mark => new PageFact("mark", mark))],
            Ticks = line.Ticks,
            LineUp = [.. line.SeeMarks.Select(mark => mark.Text)],
            Checks = [.. line.Checks.Select(ProseHtml.Render)],
            Facts = [.. Facts(line)],
            Torque = line.Torque,
            Turn = line.Turn,
            Bags = line.Bags,
            EmptiesBags = line.EmptiesBags,
            Store = line.Store,
            Reading = Reading(step),
            Signed = line.Signed,
            Seconds = line.Seconds,
            Earlier = step.Earlier,
            Turns = turns,
            Figures = line.Figures,
        };
    }

    /// <summary>What is worked down where an energy goes or comes; a pack has the first of it on a card of its own.</summary>
    private static IEnumerable<PlanSafetyLine> Safety(PlanStep line, Plan plan) =>
        [.. line.MakeSafe > 0 ? plan.Energies[line.MakeSafe - 1].MakeSafe : [], .. line.Isolation?.Lines ?? [], .. line.Return?.Lines ?? []];

    private static IEnumerable<PageFact> Facts(PlanStep line)
    {
        if (line.People > 1)
        {
            yield return new PageFact("people", $"{line.People}");
        }

        if (line.Kilograms > 0)
        {
            yield return new PageFact($"{(line.Hoist ? "hoist" : "lift")}{(line.TooHeavy ? "-too-heavy" : "")}", FormattableString.Invariant($"{line.Kilograms:0.#} kg"));
        }

        foreach (var (sort, texts) in new (string, IEnumerable<string>)[]
        {
            ("wear", line.Ppe), ("tools", line.Tools), ("crowfoot", [line.Crowfoot]), ("order", [line.Pattern]), ("new", line.NewParts.Select(part => part.Text)),
            ("use", line.Consumes), ("scrap", [line.Scrap]), ("write-down", [line.Record, .. line.Notes.Select(note => note.Text)]),
            ("not", line.Which?.Not.Select(other => $"{other.Piece} ({other.Bag})") ?? []), ("cures", [line.Cure?.Time ?? ""]),
            ("after-curing", line.WaitsForCureOf.Select(number => $"{number}")),
            ("still-open", line.Return?.StillOpen.Select(open => $"{open.Title}: {open.State}") ?? []),
        })
        {
            var said = string.Join(", ", texts.Where(text => text.Length > 0));
            if (said.Length > 0)
            {
                yield return new PageFact(sort, said);
            }
        }
    }

    private static PageReading? Reading(CourseStep step)
    {
        if (step.Line.Reading is null && step.Expect is null)
        {
            return null;
        }

        var (text, words) = (step.Line.Reading?.Text ?? (step.Target is Energy ? "" : step.Line.Text), step.Line.Reading?.Limits ?? "");
        if (step.Expect is not { } limit)
        {
            return new PageReading(text, words, "", null, null, WithoutEnds: false);
        }

        var quantity = limit.Quantity;
        var (low, high) = limit.Relation switch
        {
            LimitRelation.AtMost or LimitRelation.Less => ((double?)null, (double?)quantity.High),
            LimitRelation.AtLeast or LimitRelation.More => (quantity.Low, null),
            _ => (quantity.Low, quantity.High),
        };
        return new PageReading(text, words.Length > 0 ? words : Limits.Say(limit), quantity.Unit.Symbol, low, high, limit.Relation is LimitRelation.Less or LimitRelation.More);
    }

    private static ImmutableArray<PageAlert> Alerts(ImmutableArray<PlanAlert> alerts) => [.. alerts.Select(alert => new PageAlert(alert.Word, ProseHtml.Render(alert.Text)))];

    private static IEnumerable<PageItem> Items(Machine machine) => machine.Items.Values.Where(item => item is Part or Joint or Energy or Fluid or Control)
        .Select(item => new PageItem(item.Name, TrueMachine.Title(item), (item as Joint)?.Count ?? 0, [.. TrueMachine.WordsFor(item)], item is Control control ? [.. control.Positions] : []))
        .OrderBy(item => item.Title, StringComparer.OrdinalIgnoreCase);
}
