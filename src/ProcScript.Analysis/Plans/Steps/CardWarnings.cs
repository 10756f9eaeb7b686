using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Plans.Steps;

/// <summary>
/// What stands before which step. An author's alert at a step stands there. That of an item, that of the step which is undone, and the usual
/// caution for a hazard stand before the first step of a card that touches the item, once a card: who carries a card reads it from the top.
/// </summary>
internal sealed class CardWarnings
{
    private readonly Touching _touching;
    private readonly Dictionary<int, ImmutableArray<PlanAlert>> _byStep = [];
    private readonly Dictionary<int, ImmutableArray<UsualGear>> _gear = [];
    private readonly List<(Hazard Hazard, UsualCaution Caution, MachineItem Item)> _met = [];
    private CardTold _told = new();
    private bool _hasPower;

    private readonly Wordbook _book;

    private CardWarnings(Touching touching, Wordbook book) => (_touching, _book) = (touching, book);

    /// <summary>The hazards that the job touches, in the order they are met, with the items that are marked.</summary>
    public ImmutableArray<PlanHazard> Hazards =>
    [
        .. from one in _met
           group one by one.Hazard into met
           select new PlanHazard(
               HazardWords.Of(met.Key),
               met.First().Caution.Title(_book),
               string.Join(' ', met.Select(one => one.Caution.Text(_book)).Distinct()),
               [.. met.Select(one => ItemWords.Whole(one.Item)).Distinct()]),
    ];

    /// <summary>What stands before a step, the worst first.</summary>
    public ImmutableArray<PlanAlert> this[int step] => _byStep[step];

    /// <summary>What the usual cautions say to wear that stand over a step: before it, or before an earlier one of its card of the same hazard.</summary>
    public ImmutableArray<UsualGear> GearAt(int step) => _gear[step];

    /// <summary>Goes through the steps, card by card.</summary>
    public static CardWarnings Of(ImmutableArray<PlannedStep> steps, MachineFacts facts, Wordbook book)
    {
        var warnings = new CardWarnings(facts.Touching, book);
        (PlanPhase, int)? card = null;
        foreach (var step in steps)
        {
            if (card != (step.Phase, step.Card))
            {
                card = (step.Phase, step.Card);
                warnings._told = new CardTold();
            }

            warnings.Add(step);
        }

        return warnings;
    }

    private void Add(PlannedStep step)
    {
        // What was hot has cooled by the time it goes back, until there is power again.
        _hasPower |= step is { Phase: PlanPhase.Refit, Verb: Verb.Restore };
        ImmutableArray<Touch> touched = step.Target is { } target ? [.. _touching.By(target, step.Position)] : [];
        var written = new List<Alert>();
        foreach (var touch in touched)
        {
            written.AddRange(touch.Item.Alerts.Where(alert => Stands(alert, touch, step.Phase) && _told.Add(alert, touch.Item)));
        }

        foreach (var alert in step.Alerts)
        {
            // What an author wrote at this very step stands here, told before or not.
            if (_told.Add(alert, null) || !written.Exists(other => CardTold.Covers(other, alert)))
            {
                written.Add(alert);
            }
        }

        written.AddRange(step.MirroredAlerts.Where(alert => _told.Add(alert, null)));
        var usual = new List<UsualCaution>();
        var gear = new List<UsualGear>();
        foreach (var touch in touched)
        {
            foreach (var hazard in touch.Item.Hazards.Where(hazard => !(hazard == Hazard.HotSurface && touch.IsFarEnd)))
            {
                _met.Add((hazard, UsualCautions.ForLettingGo(hazard, touch.Item), touch.Item));
                if (Usual(hazard, touch.Item, step) is not { } caution)
                {
                    continue;
                }

                if (_told.Add(caution, hazard, touch.Item))
                {
                    usual.Add(caution);
                }

                gear.AddRange(_told.Has(caution) ? caution.Gear : []);
            }
        }

        _gear.Add(step.Number, [.. gear.Distinct()]);
        _byStep.Add(step.Number, AlertWords.Of(written, usual, _book));
    }

    private static bool Stands(Alert alert, Touch touch, PlanPhase phase) =>
        (phase == PlanPhase.Refit ? alert.IsOfRefit : alert.IsOfStrip) && (!touch.GraveOnly || alert.Word.IsOfSeriousInjury());

    private UsualCaution? Usual(Hazard hazard, MachineItem item, PlannedStep step)
    {
        if (step.Phase != PlanPhase.Refit || ActionTable.Row(step.Verb).Phase == ActionPhase.Strip)
        {
            return UsualCautions.ForLettingGo(hazard, item);
        }

        return hazard != Hazard.HotSurface || _hasPower ? UsualCautions.ForPuttingBack(hazard, item) : null;
    }
}
