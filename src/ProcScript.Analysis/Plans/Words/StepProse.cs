using System.Collections.Immutable;
using ProcScript.Analysis.Fluids;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Plans.Words;

/// <summary>What a card says beside the text of a step: how, alerts, checks, readings.</summary>
internal static class StepProse
{
    /// <summary>How it is done: what the machine says of the item, how it is tightened, then what the author says of the action.</summary>
    /// <param name="step">The step.</param>
    /// <param name="onCard">Whether its lines stand on the make-safe card.</param>
    public static ImmutableArray<string> How(PlannedStep step, bool onCard) => [.. onCard ? OnCard(step) : OfItem(step), .. OfLift(step), .. TighteningWords.Of(step), .. step.Details.How];

    /// <summary>What to check once it is done: what the trade always checks where the author says nothing of it, then the author's checks.</summary>
    public static ImmutableArray<string> Checks(PlannedStep step, bool onCard) => [.. onCard ? [] : Usual(step), .. step.Details.Checks];

    /// <summary>The reading to write down, or null: what stands on the make-safe card is written there and not again.</summary>
    public static PlanReading? Reading(PlannedStep step, bool onCard) => step switch
    {
        { Verb: Verb.Measure } => new PlanReading(step.Text ?? "", Limits(step)),
        { Expect: not null } => new PlanReading("Reading", Limits(step)),
        _ when !onCard && Verified(step) is { Verify: { } verify, VerifyExpect: { } limit } => new PlanReading(verify, limit.Print()),
        { Verb: Verb.Empty } => new PlanReading("Amount taken out", ""),
        { Verb: Verb.Fill } => new PlanReading("Amount filled", step.Charge is { } charge ? charge.Print() : ""),
        _ => null,
    };

    /// <summary>The energy that the step proves to be off, or null: where it is isolated, or by a step of its own.</summary>
    public static Energy? Verified(PlannedStep step) => step.EndsProved ? step.Target as Energy : null;

    private static string Limits(PlannedStep step) => step.Expect is { } limit ? limit.Print() : "";

    private static IEnumerable<string> OfItem(PlannedStep step) => Present(step switch
    {
        { Verb: Verb.Cap, BareSide: { } away } => [$"Only the ends that stay in the machine, not those of the {away.Title}, which goes for good."],
        { Verb: Verb.Uncap, BareSide: { } away } =>
            [$"Take out of the new {away.Title}, too, whatever closes it for transport at these ends."],
        { Joint: { } joint, Opens: true } => [joint.Release],
        { Joint: { } joint, Closes: true } => [joint.Engage],
        { Part: { } part, Verb: Verb.Aside } => [part.Aside?.How],
        { Target: Energy energy, Verb: Verb.Isolate } =>
        [
            energy.Prepare,
            energy.Shutdown,
            energy.Isolate,
            energy.Lock,
            energy.Bleed,
            energy.Wait is { } wait ? $"Then wait {wait.Print()}." : null,
            step.EndsProved ? SafetyLines.VerifyPlace(energy) : Unproved(step),
        ],
        { Target: Energy energy, Verb: Verb.Verify } => [SafetyLines.VerifyPlace(energy)],
        { Target: Energy energy, Verb: Verb.Restore } => [energy.Restore, .. StillOpen(step.Open)],
        { Target: Fluid fluid, Verb: Verb.Empty } => [fluid.Empty],
        { Target: Fluid fluid, Verb: Verb.Fill } => [fluid.Fill, .. step.Brings.Select(Brought)],
        { Part: not null, Verb: Verb.Fit, Brings: [_, ..] brings } => [.. brings.Where(brought => !brought.Change.Adds).Select(Brought)],
        _ => [],
    });

    /// <summary>That nobody knows how heavy a part gets, where hands lift it.</summary>
    private static IEnumerable<string> OfLift(PlannedStep step) =>
        step is { Part: { MassUnknown: { } because, Hoist: false }, Verb: Verb.Remove or Verb.Fit, Details.Hoist: false }
            ? [$"Its mass is not known: {because} Try its weight with care before you lift, and get help or a hoist."]
            : [];

    private static IEnumerable<string> Usual(PlannedStep step) => Present(step switch
    {
        _ when Verified(step) is { VerifyExpect: null } energy => [energy.Verify ?? "Verify that it is off before you go on."],
        { Verb: Verb.Empty, Target: Fluid fluid } when FluidWords.LeastRecovered(fluid) is { Length: > 0 } least =>
            [$"At least {least} came out, 95 % of the nameplate charge. If less, write down that the circuit may leak."],
        { Verb: Verb.Fill, Target: Fluid fluid } when FluidWords.IsRefrigerant(fluid) =>
            ["Charged by weight to the nameplate, never back to what came out."],
        { Closes: true, Joint.IsLock: true } => ["Each one is locked: nothing can turn back or fall out."],
        { Verb: Verb.Plug, Joint.Engage: null } => ["Pull at the body, never at the wires: it stays."],
        _ => [],
    });

    private static IEnumerable<string> OnCard(PlannedStep step) => step is { Verb: Verb.Isolate, EndsProved: false } ? [Unproved(step)] : [];

    private static string Unproved(PlannedStep step) => $"Treat it as live until step {step.ProvedAt} has proved that it is off.";

    private static IEnumerable<string> StillOpen(ImmutableArray<OpenItem> open) =>
        from item in open
        group ItemWords.Whole(item.Item) by item.Because into items
        select $"Still open: {string.Join("; ", items.Distinct())}. {items.Key} Cap or cover what is bare, and keep clear of it.";

    private static string Brought(BroughtChange brought) => $"{FluidWords.Of(brought)}.";

    private static IEnumerable<string> Present(IEnumerable<string?> texts) => texts.OfType<string>();
}
