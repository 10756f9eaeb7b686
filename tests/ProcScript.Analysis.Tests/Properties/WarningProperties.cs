using CsCheck;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Analysis.Tests.Plans;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Tests.Properties;

/// <summary>No card lets a hand touch what can hurt before it says so, whichever way the card goes.</summary>
public sealed class WarningProperties
{
    [Fact]
    public void No_step_on_an_item_or_on_what_frees_it_precedes_its_alert_and_nothing_else_brings_it()
    {
        var told = 0;
        All(sample =>
        {
            foreach (var (card, item, alert) in from card in sample.Cards from item in sample.Machine.Items.Values from alert in item.Alerts select (card, item, alert))
            {
                var isGrave = alert.Word is SignalWord.Danger or SignalWord.Warning;
                var touching = card.Stage.Steps.Where(step => NaiveHand.Touches(sample.Action(step), item, isGrave)).ToList();
                var isMeant = alert.Phase == NeedsPhase.Both || (alert.Phase == NeedsPhase.Refit) == card.IsRefit;
                Assert.Equal(isMeant ? touching.Take(1).Select(step => step.Number) : [], Standing(card, alert.Text));
                Interlocked.Add(ref told, touching.Count);
            }
        });
        Assert.True(told > Depth.Least(1000), $"only {told} steps touched what has an alert");
    }

    [Fact]
    public void No_step_on_an_item_or_on_what_frees_it_precedes_the_usual_caution_for_its_hazard()
    {
        var told = 0;
        All(sample =>
        {
            foreach (var (card, item, hazard) in from card in sample.Cards from item in sample.Machine.Items.Values from hazard in item.Hazards select (card, item, hazard))
            {
                var first = card.Stage.Steps
                    .Where(step => LetsGo(sample, card, step) || hazard != Hazard.HotSurface || step.Number >= sample.PowerBack)
                    .Where(step => NaiveHand.Touches(sample.Action(step), item, grave: true))
                    .Where(step => hazard != Hazard.HotSurface || !NaiveHand.IsFarFrom(sample.Action(step), item))
                    .GroupBy(step => Caution(sample, card, step, hazard, item), step => step.Number);
                foreach (var one in first)
                {
                    Assert.InRange(Assert.Single(Standing(card, one.Key)), 1, one.First());
                    Interlocked.Increment(ref told);
                }
            }
        });
        Assert.True(told > Depth.Least(500), $"only {told} cautions were wanted");
    }

    [Fact]
    public void A_usual_caution_has_an_item_that_it_speaks_of() => All(sample =>
    {
        foreach (var card in sample.Cards)
        {
            foreach (var (step, alert) in from step in card.Stage.Steps from alert in step.Alerts where alert.IsUsual select (step, alert))
            {
                Assert.Contains(
                    sample.Machine.Items.Values,
                    item => NaiveHand.Touches(sample.Action(step), item, grave: true)
                        && item.Hazards.Any(hazard => Caution(sample, card, step, hazard, item) == alert.Text));
            }
        }
    });

    [Fact]
    public void What_stands_at_a_step_stands_there_and_before_what_undoes_it()
    {
        var mirrored = 0;
        All(sample =>
        {
            foreach (var action in sample.Report.Outcome.Strip!.Actions.Where(action => action.Origin is not Runs.InsertedCap))
            {
                var step = Assert.IsType<Runs.WrittenStep>(action.Origin).Step;
                var mirrors = sample.Mirrors(action);
                foreach (var alert in step.Alerts.Concat(step.Details.Alerts))
                {
                    int[] wanted = [.. alert.Phase == NeedsPhase.Refit ? Array.Empty<int>() : [action.Number + 1], .. alert.Phase == NeedsPhase.Strip ? [] : mirrors];
                    Assert.Equal(wanted, sample.Cards.SelectMany(card => Standing(card, alert.Text)));
                    Interlocked.Increment(ref mirrored);
                }
            }
        });
        Assert.True(mirrored > Depth.Least(300), $"only {mirrored} alerts stood at steps");
    }

    [Fact]
    public void The_worst_stands_first() => All(sample =>
    {
        string[] order = ["danger", "warning", "caution", "notice"];
        Assert.All(
            sample.Plan.AllSteps(),
            step => Assert.Equal(step.Alerts.Select(alert => alert.Word).OrderBy(word => Array.IndexOf(order, word)), step.Alerts.Select(alert => alert.Word)));
    });

    /// <summary>Whether a step opens or takes off: on the way back, too, where it is about what is temporary.</summary>
    private static bool LetsGo(WarnedSample sample, WarnedCard card, PlanStep step) =>
        !card.IsRefit || sample.Action(step).Verb is Verb.Undo or Verb.Loosen or Verb.Release or Verb.Unplug or Verb.Disconnect or Verb.Cut or Verb.Aside or Verb.Remove;

    private static string Caution(WarnedSample sample, WarnedCard card, PlanStep step, Hazard hazard, MachineItem item) =>
        (LetsGo(sample, card, step) ? UsualCautions.ForLettingGo(hazard, item) : UsualCautions.ForPuttingBack(hazard, item)).Text(Wordbook.English);

    private static IEnumerable<int> Standing(WarnedCard card, string text) =>
        card.Stage.Steps.SelectMany(step => step.Alerts.Where(alert => alert.Text == text).Select(_ => step.Number));

    private static void All(Action<WarnedSample> holds)
    {
        var proven = 0;
        Sample.Seeds().Sample(
            seed =>
            {
                if (WarnedSample.Of(seed) is { } sample)
                {
                    holds(sample);
                    Interlocked.Increment(ref proven);
                }
            },
            iter: Depth.Of(600));
        Assert.True(proven > Depth.Least(160), $"only {proven} samples were proven");
    }
}
