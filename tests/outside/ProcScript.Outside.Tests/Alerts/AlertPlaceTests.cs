using System.Net;
using System.Text.RegularExpressions;
using ProcScript.Analysis;
using ProcScript.Analysis.Plans;
using ProcScript.Cards;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Outside.Tests.Alerts;

/// <summary>
/// Where a warning stands, over the packs of the demo library as they are printed. Each WARNING, CAUTION or NOTE speaks of the step that
/// follows it (MIL-STD-38784 as explained on the mailing list techwr-l, February 2008; read, secondary). It stands before the step it belongs
/// to, never after it and never apart from it (MIL-STD-38784 and the embedded messages of ANSI Z535.6; from memory). Of several the worst
/// comes first (MIL-STD-38784; from memory).
/// </summary>
[Slow]
public sealed partial class AlertPlaceTests
{
    private static readonly string[] WorstFirst = ["DANGER", "WARNING", "CAUTION", "NOTICE"];

    private static readonly Lazy<IReadOnlyList<(ProcedureReport Report, Plan Plan)>> Packs = new(
        () => [.. LibraryCheck.Run(new MemorySourceStore(Files())).Procedures.Where(report => report.IsProven).Select(report => (report, report.CreatePlan()!))]);

    [Fact]
    public void On_paper_every_alert_is_followed_by_the_step_it_speaks_of_the_worst_first()
    {
        var seen = 0;
        foreach (var (_, plan) in Packs.Value)
        {
            var steps = plan.Strip.Append(plan.Work).Concat(plan.Refit).SelectMany(card => card.Steps).ToDictionary(step => step.Number);
            var alerts = AlertsOnPaper(WorkPack.Markdown(plan, PackTemplates.Standard).Text).ToList();
            foreach (var (number, words) in alerts)
            {
                Assert.Equal(steps[number].Alerts.Select(alert => alert.Word.ToUpperInvariant()), words);
                Assert.Equal(words.OrderBy(word => Array.IndexOf(WorstFirst, word)), words);
                seen += words.Count;
            }

            Assert.Equal(steps.Values.Count(step => !step.Alerts.IsEmpty), alerts.Count);
        }

        Assert.True(seen > 100, $"only {seen} alerts were read");
    }

    [Fact]
    public void In_a_browser_every_alert_stands_before_the_words_of_its_step_and_behind_the_step_before()
    {
        foreach (var (_, plan) in Packs.Value)
        {
            var html = WebUtility.HtmlDecode(WorkPack.Html(plan, PackTemplates.Standard).Text);
            foreach (var step in plan.Strip.Append(plan.Work).Concat(plan.Refit).SelectMany(card => card.Steps))
            {
                var from = html.IndexOf($"id=\"step-{step.Number}\"", StringComparison.Ordinal);
                var next = html.IndexOf($"id=\"step-{step.Number + 1}\"", StringComparison.Ordinal);
                var told = html[from..(next < 0 ? html.Length : next)];
                // The count stands in a column of its own, before the words.
                var words = told.IndexOf($"<b>{new Regex($"(?<![^ ]){step.Count} × ").Replace(step.Text, "", 1)}</b>", StringComparison.Ordinal);
                Assert.True(from >= 0 && words > 0, $"step {step.Number} of {plan.Job} is not told");
                Assert.Equal(step.Alerts.Length, AlertBox().Count(told[..words]));
            }
        }
    }

    /// <summary>What an alert of the demo machines speaks of is read from the machine: the item, the joints at a part, what carries a fluid.</summary>
    [Fact]
    public void No_card_works_on_what_has_an_alert_before_it_says_so()
    {
        var seen = 0;
        foreach (var (report, plan) in Packs.Value)
        {
            foreach (var (card, isRefit) in plan.Strip.Append(plan.Work).Select(card => (card, false)).Concat(plan.Refit.Select(card => (card, true))))
            {
                foreach (var (item, alert) in report.Procedure.Machine.Items.Values.SelectMany(item => item.Alerts, (item, alert) => (item, alert)))
                {
                    var first = card.Steps.FirstOrDefault(step => report.Procedure.Machine.Items.TryGetValue(step.Item, out var target) && IsAt(target, item, alert));
                    if (first is not null && alert.Phase != (isRefit ? NeedsPhase.Strip : NeedsPhase.Refit))
                    {
                        Assert.True(
                            card.Steps.Any(step => step.Number <= first.Number && step.Alerts.Any(told => told.Text == alert.Text)),
                            $"{plan.Job}, {card.Title}: step {first.Number} works on the {item.Title} before \"{alert.Text}\"");
                        seen++;
                    }
                }
            }
        }

        Assert.True(seen > 50, $"only {seen} alerts were looked for");
    }

    private static bool IsAt(MachineItem target, MachineItem item, Alert alert) => target == item || (target is Joint joint && item switch
    {
        Part part => joint.Owner == part || joint.Other == part,
        Joint under => joint.Over == under,
        Fluid fluid => joint.Carries == fluid,
        Energy energy => joint.On == energy && alert.Word.IsOfSeriousInjury(),
        _ => false,
    });

    /// <summary>The steps of a Markdown pack that have alerts, with the signal words above each.</summary>
    private static IEnumerable<(int Step, List<string> Words)> AlertsOnPaper(string pack)
    {
        var words = new List<string>();
        var (isInCards, isHandOver, isIsolation) = (false, false, false);
        foreach (var line in pack.Split('\n'))
        {
            if (line.StartsWith('#'))
            {
                isHandOver = line.StartsWith("### Hand-over", StringComparison.Ordinal);
            }

            if (isHandOver)
            {
                // What is told whoever takes over stands before the lines to go through, and no step is done on that card.
                Assert.Empty(words);
            }
            else if (SignalLine().Match(line) is { Success: true } signal)
            {
                words.Add(signal.Groups[1].Value);
            }
            else if (StepLine().Match(line) is { Success: true } step)
            {
                (isInCards, isIsolation) = (true, false);
                if (words.Count > 0)
                {
                    yield return (int.Parse(step.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture), [.. words]);
                    words.Clear();
                }
            }
            else if (isIsolation || line.StartsWith("**Make safe again", StringComparison.Ordinal))
            {
                // The lines of an isolation are a part of the step that they stand before, and the alert is read before them.
                isIsolation = true;
            }
            else if (!line.StartsWith('>') && line.Length > 0)
            {
                // Nothing stands between an alert and its step. Those above the cards are for the whole job.
                Assert.True(words.Count == 0 || !isInCards, $"\"{line}\" stands between an alert and its step");
                words.Clear();
            }
        }

        Assert.Empty(words);
    }

    private static IEnumerable<KeyValuePair<string, string>> Files()
    {
        var library = Path.Combine(Checkout.Root, "procedures");
        return Directory.EnumerateFiles(library, "*.proc", SearchOption.AllDirectories)
            .Select(path => KeyValuePair.Create(Path.GetRelativePath(library, path).Replace('\\', '/'), File.ReadAllText(path)));
    }

    [GeneratedRegex(@"^> \*\*(?:⚠ )?(DANGER|WARNING|CAUTION|NOTICE)\*\*$")]
    private static partial Regex SignalLine();

    [GeneratedRegex(@"^- \[ \] \*\*([0-9]+)\. ")]
    private static partial Regex StepLine();

    [GeneratedRegex("class=\"alert ")]
    private static partial Regex AlertBox();
}
