using System.Collections.Immutable;
using ProcScript.Analysis.Plans;

namespace ProcScript.Cards.Tests.Samples;

/// <summary>A plan that stops in its first stage, with every sort of line on the hand-over card, and has words written down.</summary>
internal static class SampleHandOver
{
    /// <summary>The plan: step 2 asks for words, step 3 stops.</summary>
    public static Plan Paused { get; } = Create();

    /// <summary>What is handed over in it.</summary>
    public static PlanHandOver Card => Paused.Strip[0].Steps[2].HandOver!;

    private static Plan Create()
    {
        var plan = SamplePlan.Brief;
        var steps = plan.Strip[0].Steps;
        ImmutableArray<PlanHandOverSection> sections =
        [
            new("energy", "Energies", [new("12 V battery: isolated and proved to be off. Lock: Hang your tag on the cable.", 1, null)]),
            new("fluid", "Fluids that are out", [new("coolant", 2, null)]),
            new("propped", "Propped", [new("roof panel, on adjustable roof stand", 2, null)]),
            new("control", "Controls away from home", [new("heater at hot, home is off", 1, null)]),
            new("open", "Joints that are open", [new("8 × M8 × 25 flange bolt (roof panel, outer edge): 4 of 8 on", 2, null)]),
            new("aside", "Moved aside", [new("side console", 1, null)]),
            new("out", "Out of the machine, and where it lies", [new("seat", 1, "Bench"), new("headliner", 2, "")]),
            new("bag", "Bags with hardware in them", [new("Bag 1: 12 × push-in clip", 1, null), new("Bag 2: 4 × M8 × 25 flange bolt", 2, null)]),
            new("goes on", "Goes on by itself", [new("1 × edge sealant (roof panel) cures for 2 h: do not load it before", 2, null)]),
        ];
        var over = new PlanHandOver(
            3,
            "The seal comes tomorrow",
            "12 h",
            2,
            SamplePlan.Steps(plan).Count(),
            sections,
            [
                new("danger", "Mains voltage kills. Only a qualified person opens this circuit."),
                new("warning", "**roof panel:** It hangs and can fall until all that holds it is closed.") { IsUsual = true },
            ],
            4,
            "Undo 4 × M8 × 25 flange bolt, roof panel");
        return plan with
        {
            Job = "paused",
            Strip =
            [
                plan.Strip[0] with
                {
                    Steps =
                    [
                        steps[0] with { Isolation = SampleSafety.Isolation },
                        steps[1] with { Verb = "record", Text = "Write down: What leaked, and from where", Record = "What leaked, and from where", Reading = null },
                        steps[2] with { Verb = "pause", Text = "Stop here: The seal comes tomorrow", HandOver = over, Reading = null },
                        .. steps[3..],
                    ],
                },
                .. plan.Strip[1..],
            ],
        };
    }
}
