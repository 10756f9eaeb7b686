using System.Collections.Immutable;
using ProcScript.Analysis.Fluids;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Plans.Words;

/// <summary>
/// What a card says beside the text of a step: how, alerts, checks, readings. Of a step that isolates an energy, the lines and the reading stand on
/// the make-safe card, or where it is not the first, in a list of their own.
/// </summary>
internal static class StepProse
{
    /// <summary>How it is done: what the machine says of the item, how it is tightened, then what the author says of the action.</summary>
    /// <param name="step">The step.</param>
    /// <param name="onCard">Whether its lines stand on the make-safe card.</param>
    public static ImmutableArray<string> How(PlannedStep step, bool onCard) => [.. onCard || step.Verb == Verb.Isolate ? OnCard(step) : OfItem(step), .. OfLift(step), .. TighteningWords.Of(step), .. step.Details.How];

    /// <summary>What to check once it is done: what the trade always checks where the author says nothing of it, then the author's checks.</summary>
    public static ImmutableArray<string> Checks(PlannedStep step, bool onCard) => [.. onCard || step.Verb == Verb.Isolate ? [] : Usual(step), .. step.Details.Checks];

    /// <summary>The reading to write down, or null: what stands on the make-safe card is written there and not again.</summary>
    public static PlanReading? Reading(PlannedStep step, bool onCard) => step switch
    {
        { Verb: Verb.Measure } => new PlanReading(step.Text ?? "", Limits(step)),
        { Expect: not null } => new PlanReading(step.Book.Say("reading"), Limits(step)),
        _ when !onCard && step.Verb != Verb.Isolate && Verified(step) is { Verify: { } verify, VerifyExpect: { } limit } => new PlanReading(verify, step.Book.Print(limit)),
        { Verb: Verb.Empty } => new PlanReading(step.Book.Say("reading.taken-out"), ""),
        { Verb: Verb.Fill } => new PlanReading(step.Book.Say("reading.filled"), step.Charge is { } charge ? step.Book.Print(charge) : ""),
        _ => null,
    };

    /// <summary>The energy that the step proves to be off, or null: where it is isolated, or by a step of its own.</summary>
    public static Energy? Verified(PlannedStep step) => step.EndsProved ? step.Target as Energy : null;

    private static string Limits(PlannedStep step) => step.Expect is { } limit ? step.Book.Print(limit) : "";

    private static IEnumerable<string> OfItem(PlannedStep step) => Present(step switch
    {
        { Verb: Verb.Cap, BareSide: { } away } => [step.Book.Say("how.cap.only-staying", ("part", away.Title))],
        { Verb: Verb.Uncap, BareSide: { } away } =>
            [step.Book.Say("how.uncap.transport", ("part", away.Title))],
        { Joint: { } joint, Opens: true } => [joint.Release],
        { Joint: { } joint, Closes: true } => [joint.Engage],
        { Part: { } part, Verb: Verb.Aside } => [part.Aside?.How],
        { Target: Energy energy, Verb: Verb.Verify } => [new SafetyLines(step.Book).VerifyPlace(energy)],
        { Target: Energy energy, Verb: Verb.Restore } => [energy.Restore, .. StillOpen(step)],
        { Target: Fluid fluid, Verb: Verb.Empty } => [fluid.Empty],
        { Target: Fluid fluid, Verb: Verb.Fill } => [fluid.Fill, .. step.Brings.Select(brought => Brought(brought, step))],
        { Part: not null, Verb: Verb.Fit, Brings: [_, ..] brings } => [.. brings.Where(brought => !brought.Change.Adds).Select(brought => Brought(brought, step))],
        _ => [],
    });

    /// <summary>That nobody knows how heavy a part gets, where hands lift it.</summary>
    private static IEnumerable<string> OfLift(PlannedStep step) =>
        step is { Part: { MassUnknown: { } because, Hoist: false }, Verb: Verb.Remove or Verb.Fit, Details.Hoist: false }
            ? [step.Book.Say("how.mass-unknown", ("because", because))]
            : [];

    private static IEnumerable<string> Usual(PlannedStep step) => Present(step switch
    {
        _ when Verified(step) is { VerifyExpect: null } energy => [energy.Verify ?? step.Book.Say("check.verify")],
        { Verb: Verb.Empty, Target: Fluid fluid } when FluidWords.LeastRecovered(fluid, step.Book) is { Length: > 0 } least =>
            [step.Book.Say("check.recovered", ("amount", least))],
        { Verb: Verb.Fill, Target: Fluid fluid } when FluidWords.IsRefrigerant(fluid) =>
            [step.Book.Say("check.charged")],
        { Closes: true, Joint.IsLock: true } => [step.Book.Say("check.locked", ("count", step.Count))],
        { Verb: Verb.Plug, Joint.Engage: null } => [step.Book.Say("check.plug", ("count", step.Count))],
        _ => [],
    });

    private static IEnumerable<string> OnCard(PlannedStep step) =>
        step is { Verb: Verb.Isolate, EndsProved: false } ? [step.Book.Say("how.treat-as-live", ("step", step.ProvedAt))] : [];

    private static IEnumerable<string> StillOpen(PlannedStep step) =>
        from item in step.Open
        group ItemWords.Whole(item.Item) by item.Because into items
        select step.Book.Say("how.still-open", ("items", string.Join("; ", items.Distinct())), ("because", items.Key));

    private static string Brought(BroughtChange brought, PlannedStep step) => $"{FluidWords.Of(brought, step.Book)}.";

    private static IEnumerable<string> Present(IEnumerable<string?> texts) => texts.OfType<string>();
}
