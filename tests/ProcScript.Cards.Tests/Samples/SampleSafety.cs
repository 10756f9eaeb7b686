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
        Return =
        [
            new("area", "Tools are out.", true),
            new("people", "Everybody is clear.", true),
            new("locks", "Each comes off by the one who put it on.", true),
            new("tell", "Those concerned know.", true),
            new("restore", Restore, false),
        ],
    };

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
