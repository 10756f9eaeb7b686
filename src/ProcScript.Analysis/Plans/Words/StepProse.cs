using System.Collections.Immutable;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Plans.Words;

/// <summary>What a card says beside the text of a step: how, alerts, checks, readings.</summary>
internal static class StepProse
{
    /// <summary>How it is done: what the machine says of the item, then what the author says of the action.</summary>
    public static ImmutableArray<string> How(PlannedStep step) => [.. OfItem(step), .. step.Details.How];

    /// <summary>
    /// The item's alerts where the step opens it, then those of the action; the worst first where several stand together (common
    /// practice).
    /// </summary>
    public static ImmutableArray<PlanAlert> Alerts(PlannedStep step)
    {
        var opens = step.Phase != PlanPhase.Refit && !IsWork(step.Verb);
        return Of([.. opens && step.Target is { } item ? item.Alerts : [], .. step.Alerts, .. step.Details.Alerts]);
    }

    /// <summary>Alerts, the worst first.</summary>
    public static ImmutableArray<PlanAlert> Of(IEnumerable<Alert> alerts) =>
        [.. alerts.OrderBy(alert => alert.Word).Select(alert => new PlanAlert(Word(alert.Word), alert.Text))];

    /// <summary>What to check once it is done: what the trade always checks where the author says nothing of it, then the author's checks.</summary>
    public static ImmutableArray<string> Checks(PlannedStep step) => [.. Usual(step), .. step.Details.Checks];

    /// <summary>The reading to write down, or null.</summary>
    public static PlanReading? Reading(PlannedStep step) => step switch
    {
        { Verb: Verb.Measure } => new PlanReading(step.Text ?? "", Limits(step)),
        { Expect: not null } => new PlanReading("Reading", Limits(step)),
        { Verb: Verb.Isolate, Target: Energy { Verify: { } verify, VerifyExpect: { } limit } } =>
            new PlanReading(verify, limit.Print()),
        { Verb: Verb.Empty } => new PlanReading("Amount taken out", ""),
        { Verb: Verb.Fill, Target: Fluid fluid } =>
            new PlanReading("Amount filled", fluid.Charge is { } charge ? charge.Print() : ""),
        _ => null,
    };

    private static string Limits(PlannedStep step) => step.Expect is { } limit ? limit.Print() : "";

    private static IEnumerable<string> OfItem(PlannedStep step) => Present(step switch
    {
        { Joint: { } joint, Opens: true } => [joint.Release],
        { Joint: { } joint, Closes: true } => [joint.Engage],
        { Part: { } part, Verb: Verb.Aside } => [part.Aside?.How],
        { Target: Energy energy, Verb: Verb.Isolate } =>
            [energy.Isolate, energy.Wait is { } wait ? $"Then wait {wait.Print()}." : null],
        { Target: Energy energy, Verb: Verb.Restore } => [energy.Restore],
        { Target: Fluid fluid, Verb: Verb.Empty } => [fluid.Empty],
        { Target: Fluid fluid, Verb: Verb.Fill } => [fluid.Fill],
        _ => [],
    });

    private static IEnumerable<string> Usual(PlannedStep step) => Present(step switch
    {
        { Verb: Verb.Isolate, Target: Energy { VerifyExpect: null } energy } =>
            [energy.Verify ?? "Verify that it is off before you go on."],
        { Verb: Verb.Plug, Joint.Engage: null } => ["Pull at the body, never at the wires: it stays."],
        _ => [],
    });

    private static IEnumerable<string> Present(IEnumerable<string?> texts) => texts.OfType<string>();

    private static bool IsWork(Verb verb) =>
        verb is Verb.Replace or Verb.Repair or Verb.Clean or Verb.Inspect or Verb.Adjust or Verb.Measure or Verb.Task or Verb.Check;

    private static string Word(SignalWord word) => word switch
    {
        SignalWord.Danger => "danger",
        SignalWord.Warning => "warning",
        SignalWord.Caution => "caution",
        _ => "notice",
    };
}
