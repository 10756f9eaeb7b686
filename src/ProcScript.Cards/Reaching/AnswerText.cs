using System.Globalization;
using System.Text;
using System.Text.Json;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Reaching;
using ProcScript.Cards.Words;

namespace ProcScript.Cards.Reaching;

/// <summary>Writes ways back, visits and what an item has to do with. Same answer, same characters out.</summary>
public static class AnswerText
{
    private const string Cautions = "! Usual cautions; they do not replace the manufacturer's data, local codes or a licensed person's judgement.";

    /// <summary>A way back, as lines for a terminal.</summary>
    public static IEnumerable<string> Lines(BackReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        var plan = report.Plan;
        return
        [
            Heading(report),
            Sum(report),
            .. plan.Alerts.Select(alert => $"! {alert.Word.ToUpperInvariant()}: {alert.Text}"),
            Cautions,
            "",
            .. Renewed(plan),
            .. PlanLines.Of(plan, plan.Work, _ => ""),
            .. plan.Refit.SelectMany(stage => PlanLines.Of(plan, stage, _ => "")),
            .. LeftOut(report).Select(line => $"! {line}"),
            .. PlanLines.Lists(plan),
        ];
    }

    /// <summary>
    /// A way back as a page in Markdown, with nothing left out that keeps people safe: alerts, how energies are made safe, people, lifts, what is not
    /// checked. It is the same as in a terminal.
    /// </summary>
    public static string Page(BackReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        var plan = report.Plan;
        var page = new StringBuilder($"# {Heading(report)}\n\n{Sum(report)}\n\n");
        page.AppendJoin("", plan.Alerts.Select(alert => $"**{alert.Word.ToUpperInvariant()}**: {alert.Text}\n\n")).Append(Cautions).Append("\n\n");
        page.AppendJoin("", Renewed(plan).Where(line => line.Length > 0).Select(line => $"{line}\n\n"));
        IEnumerable<string> lines = [.. PlanLines.Of(plan, plan.Work, _ => ""), .. plan.Refit.SelectMany(stage => PlanLines.Of(plan, stage, _ => "")), .. PlanLines.Lists(plan)];
        page.AppendJoin("", LeftOut(report).Select(line => $"**{line}**\n\n"));
        return page.Append("```text\n").AppendJoin('\n', lines).Append("\n```\n").ToString();
    }

    private static string Heading(BackReport report) =>
        $"Back from step {report.After.ToString(CultureInfo.InvariantCulture)} ({report.AfterText}) of '{report.Title}', {report.MachineTitle}{With(report.With)}";

    private static string Sum(BackReport report) => $"About {Durations.InWords(report.Cost)}, proven like the whole."
        + (report.DerivedCost - report.Cost >= 1 ? $" Step by step it would be {Durations.InWords(report.DerivedCost)}." : "")
        + (report.Cost - report.Bound < 1 ? " Nothing is done twice: no way back takes fewer actions." : $" No way back saves more than {Durations.Exact(report.Cost - report.Bound)} of it.");

    private static IEnumerable<string> LeftOut(BackReport report) =>
        report.LeftOut.Select(check => $"Not checked on this way back, since it asks for more than was begun: {check}");

    /// <summary>Several jobs in one visit, as lines for a terminal.</summary>
    public static IEnumerable<string> Lines(TogetherReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        var plan = report.Plan;
        return
        [
            $"{plan.Title}, {report.MachineTitle}{With(report.With)}",
            $"In one visit about {Durations.InWords(report.Cost)}; one after the other {Durations.InWords(report.Separate)}: {(report.Saved >= 1 ? $"it saves {Durations.InWords(report.Saved)}" : "it saves nothing")}.",
            report.IsCheapest
                ? "No visit that does all of it is quicker: proved over every order of its steps and every choice between them."
                : $"The best that was found; another order or another choice of steps may save up to {Durations.InWords(report.Cost - report.Bound)} more.",
            $"In this order: {string.Join(", ", report.Jobs.Select(job => $"{job.Job} (alone {Durations.InWords(job.Alone)})"))}.",
            .. report.LeftOut.Select(left => $"Not needed in this visit: {left.Text} ({left.Job}).").Distinct(),
            .. plan.Alerts.Select(alert => $"! {alert.Word.ToUpperInvariant()}: {alert.Text}"),
            Cautions,
            "",
            .. plan.Strip.SelectMany(stage => stage.LeftOut.Select(left => $"({stage.Title}: {left.Text})").Prepend("").Where(_ => !stage.LeftOut.IsEmpty).Concat(PlanLines.Of(plan, stage, _ => ""))),
            .. PlanLines.Of(plan, plan.Work, _ => ""),
            .. plan.Refit.SelectMany(stage => PlanLines.Of(plan, stage, _ => "")),
            .. PlanLines.Lists(plan),
        ];
    }

    /// <summary>What an item has to do with, as lines for a terminal.</summary>
    public static IEnumerable<string> Lines(WhyReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return
        [
            $"{report.Title} ({report.Item}), {report.MachineTitle}{With(report.With)}",
            .. report.Alerts.Select(alert => $"! {alert}"),
            .. Section("Hazards", report.Hazards),
            .. Section("To get at it", report.Needs.Select(need =>
                $"needs {need.Text}{(need.Of.Length > 0 ? $", as all of {need.Of} does" : "")}{(need.Phase.Length > 0 ? $", {(need.Phase == "strip" ? "taking off" : "putting back")} alone" : "")}")),
            .. Section("Held by, or covered by", report.HeldBy.Select(joint => $"{joint.Title}: {joint.Verb} {joint.Name}{(joint.Covers.IsEmpty ? "" : $"; under {string.Join(", ", joint.Covers.Select(Words))}")}")),
            .. Section("Fed by, or feeds", report.FedBy.Select(Words)),
            .. Section("Asked for by", report.AskedBy.Select(other => $"{other.Title} ({other.Name}): needs {other.Needs}")),
            .. Section("To be renewed once one of these comes off", report.RenewedWith.Select(Words)),
            .. Section("Once it comes off, these are to be renewed", report.Renews.Select(Words)),
            .. Section("Inside", report.Inside.Select(Words)),
            .. Section("Touched by", report.TouchedBy.Select(step => $"{step.Verb} in {string.Join(", ", step.Jobs)} ({step.Path}:{step.Line.ToString(CultureInfo.InvariantCulture)})")),
        ];
    }

    /// <summary>As JSON, in the form that <c>back.schema.json</c> describes.</summary>
    public static string Json(BackReport report) => JsonSerializer.Serialize(report, ReachJson.Published.BackReport) + "\n";

    /// <summary>As JSON, in the form that <c>together.schema.json</c> describes.</summary>
    public static string Json(TogetherReport report) => JsonSerializer.Serialize(report, ReachJson.Published.TogetherReport) + "\n";

    /// <summary>As JSON, in the form that <c>why.schema.json</c> describes.</summary>
    public static string Json(WhyReport report) => JsonSerializer.Serialize(report, ReachJson.Published.WhyReport) + "\n";

    /// <summary>What still has to come off so that it can be renewed stands before the way back.</summary>
    private static IEnumerable<string> Renewed(Plan plan)
    {
        var replaced = plan.Work.Steps.Where(step => step.Verb == "replace").Select(step => step.ItemTitle).ToList();
        return replaced.Count == 0 ? [] : [$"New on the way back, since it serves only once or was disturbed: {string.Join(", ", replaced)}.", ""];
    }

    private static IEnumerable<string> Section(string title, IEnumerable<string> lines) =>
        lines.ToList() is { Count: > 0 } all ? [title, .. all.Select(line => $"  {line}")] : [];

    private static string Words(WhyItem item) => $"{item.Title} ({item.Name})";

    private static string With(IReadOnlyCollection<string> options) => options.Count == 0 ? "" : $" with {string.Join(", ", options)}";
}
