using System.Collections.Immutable;
using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Plans.Words;

/// <summary>
/// How an energy is made safe and how it comes back, line by line, in the order of 29 CFR 1910.147 (d) and (e) (read in the annual CFR
/// edition of 2002 and two training texts). Agriculture, construction and maritime work are outside of that rule. What an author does not
/// say is filled in by what is usual, and marked.
/// </summary>
internal static class SafetyLines
{
    private const string WholeAndBare = "All that this job opened is closed and whole. No cap is left on, and nothing that was fitted for the job.";

    private const string NotWhole =
        "Not all is closed yet. Look at each of these: nothing of it can be live, move or leak when the energy comes back, and nobody is at it.";

    /// <summary>Prepare, shut down, isolate, lock, release what is stored, wait, verify.</summary>
    public static ImmutableArray<PlanSafetyLine> MakeSafe(Energy energy) =>
    [
        Line("prepare", energy.Prepare, "Know this energy, how much of it there is and what it can do. Tell those who use the machine."),
        Line("shut down", energy.Shutdown, "Stop the machine the ordinary way."),
        Line("isolate", energy.Isolate, "Operate the device that cuts it off."),
        .. Lock(energy),
        Line("release", energy.Bleed, "Let out or hold back what is stored: pressure, springs, charge, raised weight."),
        .. Wait(energy),
        Line("verify", energy.Verify is { } verify ? string.Join(' ', Present(verify, VerifyPlace(energy))) : null, "Try the ordinary controls and measure: nothing moves, nothing is live."),
    ];

    /// <summary>Area clear, machine whole, people clear, locks off, people told; the step itself restores.</summary>
    /// <param name="energy">What comes back.</param>
    /// <param name="stillOpen">Whether something that was opened is not closed again then, or what was fitted for the job is still on.</param>
    /// <param name="temporary">Whether anything is on the machine for the job alone.</param>
    public static ImmutableArray<PlanSafetyLine> Return(Energy energy, bool stillOpen, bool temporary)
    {
        var isLocked = Lock(energy).Any();
        return
        [
            Line("area", null, "Tools and spare items are out of the machine."),
            new("whole", stillOpen ? NotWhole : temporary ? WholeAndBare : "All that this job opened is closed and whole.", false),
            Line("people", null, "Everybody is clear of the machine."),
            .. isLocked ? [Line("locks", null, "Each lock and tag comes off by the one who put it on.")] : Array.Empty<PlanSafetyLine>(),
            Line("tell", null, isLocked ? "Those concerned know that the locks are off, before it starts." : "Those concerned know of it, before it starts."),
        ];
    }

    /// <summary>Where it is proved to be off, or null.</summary>
    public static string? VerifyPlace(Energy energy) =>
        energy.VerifyAt is { } place && ItemWords.Place(place) is { Length: > 0 } words ? $"Prove it at: {words}." : null;

    private static IEnumerable<string> Present(params IEnumerable<string?> texts) => texts.OfType<string>();

    private static PlanSafetyLine Line(string action, string? written, string usual) => new(action, written ?? usual, written is null);

    /// <summary>How it is held off; nothing where nothing can hold it.</summary>
    public static IEnumerable<PlanSafetyLine> Lock(Energy energy) => energy switch
    {
        { Lock: { } written } => [Line("lock", written, "")],
        _ when !EnergySorts.CanBeLocked(energy) => [],
        _ when energy.Hazards.Contains(Hazard.HighVoltage) && EnergySorts.VoltageOf(energy) == VoltageSource.Battery =>
            [Line("lock", null, "Whoever works keeps the service plug on their person.")],
        _ => [Line("lock", null, "Put your own lock or tag on the device. Its key stays with you.")],
    };

    private static IEnumerable<PlanSafetyLine> Wait(Energy energy) => energy switch
    {
        { Wait: { } wait } => [Line("wait", $"{wait.Print()}.", "")],
        _ when energy.Hazards.Any(hazard => hazard is Hazard.Restraint or Hazard.HighVoltage) =>
            [Line("wait", null, "As long as the manufacturer says.")],
        _ => [],
    };
}
