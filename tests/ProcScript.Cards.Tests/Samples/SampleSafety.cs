using System.Collections.Immutable;
using ProcScript.Analysis.Plans;

namespace ProcScript.Cards.Tests.Samples;

/// <summary>What can hurt in the sample plan.</summary>
internal static class SampleSafety
{
    private const string Isolate = "Take the negative cable off its post and cover the post.";
    private const string Verify = "The dome lamp stays dark with the door open.";
    private const string Restore = "Refit the negative cable.";

    public static ImmutableArray<PlanHazard> Hazards { get; } =
    [
        new("refrigerant", "refrigerant", "Never vent it.", ["refrigerant R-134a"]),
        new("hot_surface", "hot surface", "Hot enough to burn. Let it cool.", ["heater core"]),
    ];

    public static PlanEnergy Battery(int isolated, int restored) => new(
        "battery", "12 V battery", Isolate, "60 s", Verify, "at most 0.5 V", Restore, isolated, restored)
    {
        After = ["seat air"],
        MakeSafe =
        [
            new("prepare", "Know this energy.", true),
            new("shut down", "Stop the engine.", false),
            new("isolate", Isolate, false),
            new("lock", "Hang your tag on the post.", false),
            new("release", "Let out what is stored.", true),
            new("wait", "60 s.", false),
            new("verify", Verify, false),
        ],
        Turns = [new(isolated, "live", "isolated"), new(restored, "isolated", "live")],
    };

    /// <summary>What stands before the step that brings the battery back, with one thing still open.</summary>
    public static PlanReturn Return { get; } = new(
        [
            new("area", "Tools are out.", true),
            new("whole", "Not all is closed yet.", false),
            new("people", "Everybody is clear.", true),
            new("locks", "Each comes off by the one who put it on.", true),
            new("tell", "Those concerned know.", true),
        ],
        [new("refrigerant R-134a", "empty", 99)]);

    /// <summary>What stands at a step that isolates the battery again.</summary>
    public static PlanIsolation Isolation { get; } = new(Battery(0, 0).MakeSafe, "at most 0.5 V");

    /// <summary>How the battery stands on a card with these steps: it comes and goes at the steps that say so.</summary>
    public static PlanEnergyState State(PlanEnergy battery, ImmutableArray<PlanStep> steps)
    {
        var turns = battery.Turns.Where(turn => steps.Any(step => step.Number == turn.Step)).ToImmutableArray();
        var before = battery.Turns.LastOrDefault(turn => turn.Step < (steps.IsEmpty ? battery.RestoredAt : steps[0].Number));
        return new(battery.Name, battery.Title, before?.State ?? "live", before?.Step ?? 0, turns);
    }

    public static PlanFluid Refrigerant(int emptied, int filled) => new(
        "refrigerant",
        "refrigerant R-134a",
        "0.85 ± 0.02 kg",
        "Recover with a certified machine. Write down what came out.",
        "Evacuate, then charge by weight.",
        emptied,
        filled)
    {
        FillTo = "0.85 ± 0.02 kg",
        Band = "0.83 to 0.87 kg",
        Changes = ["40 mL of PAG oil with the new evaporator"],
        LeastRecovered = "0.8075 kg",
    };
}
