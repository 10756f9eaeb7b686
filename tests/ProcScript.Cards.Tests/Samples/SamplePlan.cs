using System.Collections.Immutable;
using ProcScript.Analysis.Plans;

namespace ProcScript.Cards.Tests.Samples;

/// <summary>A whole plan in which every field is used, numbered the way the compiler numbers it.</summary>
internal static class SamplePlan
{
    private static readonly Dictionary<string, (string Verb, string Word)> Inverses = new(StringComparer.Ordinal)
    {
        ["undo"] = ("fasten", "Fasten"),
        ["release"] = ("engage", "Engage"),
        ["unplug"] = ("plug", "Plug"),
        ["disconnect"] = ("connect", "Connect"),
        ["cut"] = ("renew", "Renew"),
        ["aside"] = ("return", "Return"),
        ["remove"] = ("fit", "Fit"),
        ["set"] = ("set", "Set back"),
        ["isolate"] = ("restore", "Restore"),
        ["empty"] = ("fill", "Fill"),
        ["support"] = ("unsupport", "Take the support from"),
    };

    public static Plan Evaporator { get; } = Create();

    /// <summary>The least a plan can be: one step, and nothing else.</summary>
    public static Plan Bare { get; } = Create() with
    {
        Job = "bare",
        Title = "Set a lever",
        Variant = [],
        Goals = [],
        Alerts = [],
        HeaviestLift = null,
        Tools = [],
        Orders = [],
        Consumables = [],
        Ppe = [],
        Hazards = [],
        Energies = [],
        Fluids = [],
        Controls = [],
        Bags = [],
        Discards = [],
        Map = new PlanMap([], []),
        Strip = [new PlanStage("Lever", [Step(1, "set", "Set lever to down")], 10)],
        Work = new PlanStage("Work", [], 0),
        Refit = [new PlanStage("Lever", [Step(2, "set", "Set lever back to up")], 10)],
    };

    /// <summary>The sample with one stage of each sort: every part of a page is there, most only once.</summary>
    public static Plan Brief { get; } = Evaporator with { Strip = [Evaporator.Strip[0], Evaporator.Strip[2] with { Steps = [.. Evaporator.Strip[2].Steps.TakeLast(2)] }], Refit = [Evaporator.Refit[0]] };

    /// <summary>The sample with a first stage as long as four others, and a mark of its own on each side of every part of a step.</summary>
    public static Plan Marked { get; } = Mark(Evaporator);

    /// <summary>The marks of a step of <see cref="Marked"/>, in the order they are read.</summary>
    public static IReadOnlyList<string> Marks(PlanStep step) =>
    [
        .. step.Alerts.SelectMany((_, at) => new[] { $"s{step.Number}a{at}begin", $"s{step.Number}a{at}end" }),
        $"s{step.Number}text",
        .. step.How.SelectMany((_, at) => new[] { $"s{step.Number}h{at}begin", $"s{step.Number}h{at}end" }),
        .. step.Checks.Select((_, at) => $"s{step.Number}c{at}"),
    ];

    /// <summary>A plan by the name of its property, so that a test's cases have readable names.</summary>
    public static Plan Named(string name) => name == nameof(Bare) ? Bare : Evaporator;

    /// <summary>All steps of a plan, in order.</summary>
    public static IEnumerable<PlanStep> Steps(Plan plan) => plan.Strip.Append(plan.Work).Concat(plan.Refit).SelectMany(stage => stage.Steps);

    private static Plan Create()
    {
        var number = 0;
        var strip = SampleStrip.Stages.Select(stage => Stage(stage.Stage, stage.Steps, ref number)).ToList();
        var work = Stage("Work", SampleStrip.Work, ref number);
        List<PlanStage> refit = [];
        foreach (var stage in Enumerable.Reverse(strip))
        {
            List<PlanStep> steps = [];
            foreach (var step in stage.Steps.Reverse())
            {
                steps.Add(Undo(step, ++number));
                if (step.Item == "evap_unions")
                {
                    steps.Add(Step(++number, "check", "Check: new O-rings, oiled") with { Checks = ["Two new O-rings on each union, oiled."], Alerts = [new PlanAlert("caution", "Dry O-rings tear.")] });
                }
            }

            refit.Add(new PlanStage(stage.Title, [.. steps], steps.Sum(step => step.Seconds)));
        }

        refit[^1] = refit[^1] with { Steps = [.. refit[^1].Steps, Step(++number, "check", "Check the air at the vents") with { Reading = new PlanReading("Air at the middle vent after 5 min", "at most 8 °C") }] };
        var mirrors = refit.SelectMany(stage => stage.Steps).Where(step => step.Mirror > 0).ToDictionary(step => step.Mirror, step => step.Number);
        strip = [.. strip.Select(stage => stage with { Steps = [.. stage.Steps.Select(step => step with { Mirror = mirrors.GetValueOrDefault(step.Number) })] })];
        strip[^1] = strip[^1] with { LeftOut = [new PlanLeftOut(0, "Already done at step 1", [1])] };
        return Plan([.. strip], work, [.. refit], mirrors);
    }

    /// <summary>What a step says beside its count, which stands in a column of its own.</summary>
    public static string Uncounted(string text, int count) =>
        new System.Text.RegularExpressions.Regex($"(?<![^ ]){count} × ").Replace(text, "", 1);

    private static Plan Mark(Plan plan)
    {
        var number = 0;
        PlanStage Renumbered(PlanStage stage, IEnumerable<PlanStep> steps) => stage with { Steps = [.. steps.Select(step => Mark(step with { Number = ++number }))], Seconds = 600 };
        var strip = plan.Strip.SetItem(0, plan.Strip[0] with { Steps = [.. plan.Strip.SelectMany(stage => stage.Steps)] });
        return plan with
        {
            Strip = [.. strip.Select(stage => Renumbered(stage, stage.Steps))],
            Work = Renumbered(plan.Work, plan.Work.Steps),
            Refit = [.. plan.Refit.Select(stage => Renumbered(stage, stage.Steps))],
        };
    }

    private static PlanStep Mark(PlanStep step) => step with
    {
        // The close-out would name a check again.
        Verb = step.Verb == "check" ? "task" : step.Verb,
        Text = $"{step.Text} s{step.Number}text",
        Alerts = [.. step.Alerts.Select((alert, at) => alert with { Text = $"s{step.Number}a{at}begin {alert.Text} s{step.Number}a{at}end" })],
        How = [.. step.How.Select((how, at) => $"s{step.Number}h{at}begin {how}\n\ns{step.Number}h{at}end")],
        Checks = [.. step.Checks.Select((check, at) => $"{check} s{step.Number}c{at}")],
    };

    private static PlanStage Stage(string title, PlanStep[] steps, ref int number)
    {
        var first = number;
        number += steps.Length;
        return new PlanStage(title, [.. steps.Select((step, at) => step with { Number = first + at + 1 })], steps.Sum(step => step.Seconds));
    }

    private static PlanStep Undo(PlanStep step, int number)
    {
        var (verb, word) = Inverses[step.Verb];
        var text = word + step.Text[step.Text.IndexOf(' ')..];
        return step with
        {
            Number = number,
            Verb = verb,
            Text = step.Verb == "set" ? text[..text.LastIndexOf(" to ", StringComparison.Ordinal)] + " to home" : text,
            Mirror = step.Number,
            Alerts = step.Verb is "remove" ? step.Alerts : [],
            Photos = [],
            Figures = [],
            Marks = [],
            SeeMarks = [.. step.Marks.Select(mark => new PlanMark(step.Number, mark, false))],
            Notes = [],
            Ticks = [.. step.Ticks.Select(_ => "It goes back into its own place.")],
            SeePhotos = [.. step.Photos.Select(photo => new PlanPhoto(step.Number, photo))],
            Return = step.Verb == "isolate" ? SampleSafety.Return : null,
            Reading = null,
            InBackground = false,
            WaitsFor = [],
            Scrap = "",
            Torque = step.Verb == "undo" ? "22 ± 2 N·m (16 ± 1.5 lbf·ft)" : "",
            TorqueStages = step.Verb == "undo" ? [new("22 N·m", "20 to 24 N·m", "16 ± 1.5 lbf·ft")] : [],
            NewParts = step.Verb switch
            {
                "disconnect" => [new PlanNewPart("10.8 mm HNBR O-ring", 4, step.Number)],
                "cut" => [new PlanNewPart("roof seal bead", 1, step.Number)],
                "remove" when step.Item == "evaporator" => [new PlanNewPart("evaporator", 1, step.Number)],
                _ => [],
            },
            Cure = step.Verb == "cut" ? new PlanCure("2 h", 7200, [], number + 1) : null,
            Consumes = step.Verb == "disconnect" ? ["5 mL of compressor oil"] : [],
            How = step.Verb switch { "release" => ["Push until it **clicks**."], "unplug" => ["Push home, then tug the body."], "empty" => ["Evacuate, then charge by weight."], _ => step.How },
            Checks = step.Verb is "release" ? ["Tug it: it stays."] : [],
            EmptiesBags = step.Bags,
        };
    }

    private static PlanStep Step(int number, string verb, string text) => new()
    {
        Number = number,
        Verb = verb,
        Text = text,
        Seconds = 60,
        Source = new PlanSource("ketterby-t40/evaporator.proc", 60, 7),
    };

    private static Plan Plan(ImmutableArray<PlanStage> strip, PlanStage work, ImmutableArray<PlanStage> refit, Dictionary<int, int> mirrors)
    {
        var steps = strip.SelectMany(stage => stage.Steps).ToList();
        var battery = SampleSafety.Battery(3, mirrors[3]);
        PlanStage Headed(PlanStage stage) => stage with { Energies = [SampleSafety.State(battery, stage.Steps)] };
        var stripTime = strip.Sum(stage => stage.Seconds);
        var refitTime = refit.Sum(stage => stage.Seconds);
        return new Plan
        {
            Format = "1",
            Job = "replace_evaporator",
            Title = "Replace the roof evaporator",
            Machine = "ketterby_t40",
            MachineTitle = "Ketterby T40 tractor, cab",
            Variant = [new PlanOption("air_seat", "air-suspended seat", true), new PlanOption("radio", "radio in the headliner", false)],
            Revision = "4f7a91c2d0e3",
            Goals = ["replace evaporator"],
            Parameters = [new PlanParameter("side", "left")],
            GoalActions = [new PlanAction("replace", "evaporator")],
            Items = [new PlanItem("evaporator", "evaporator", "part")],
            Rules = [new PlanRule(new PlanAction("fit", "evaporator"), new PlanAction("fit", "headliner"))],
            Alerts = [new PlanAlert("warning", "The cab stands 2.6 m above the ground. Work from the platform, never from the tyre.")],
            People = 2,
            Staying = [new PlanStaying("2-way connector", 1, [2], [9])],
            Times = new PlanTimes(stripTime, work.Seconds, refitTime, stripTime + work.Seconds + refitTime, 0.6 * (stripTime + work.Seconds + refitTime), work.Seconds, stripTime + refitTime, 0),
            HeaviestLift = new PlanLift("operator seat", 31, 8, 2),
            Tools = [.. steps.SelectMany(step => step.Tools.Select(tool => (tool, step.Number))).GroupBy(use => use.tool).Select(uses => new PlanTool(uses.Key, uses.First().Number, uses.Count()))],
            ToolChanges = new PlanToolChanges(9, 2, 11, 88),
            Orders =
            [
                new PlanOrderLine("evaporator", 1, "replaced", [29], [new PlanOrderUse("evaporator", 1, 28, 29)]),
                new PlanOrderLine("10.8 mm HNBR O-ring", 4, "single use", [mirrors[24]], [new PlanOrderUse("roof", 1, 24, mirrors[24])]),
                new PlanOrderLine("roof seal bead", 1, "destroyed", [mirrors[20]], [new PlanOrderUse("roof", 1, 20, mirrors[20])]),
                new PlanOrderLine("push-in panel clip", 1, "spare", [mirrors[15]], [new PlanOrderUse("roof", 1, 15, mirrors[15])]),
            ],
            Consumables = [new PlanConsumable("coil cleaner", "0.2 L", [30]), new PlanConsumable("compressor oil", "5 mL", [mirrors[24]])],
            Ppe = ["gloves against cold", "eye protection", "helmet"],
            JobPpe = ["helmet"],
            Certificates = [new PlanCertificate("refrigerant certificate", [1, 2]), new PlanCertificate("site pass", [1, 2, 3])],
            JobCertificates = ["site pass"],
            Places = [new PlanPlace("footwell", 1, [2])],
            Hazards = SampleSafety.Hazards,
            Energies = [battery],
            Fluids = [SampleSafety.Refrigerant(1, mirrors[1])],
            Controls = [new PlanControl("column", "steering column", "up", ["up", "down"]), new PlanControl("heater_valve", "heater valve", "open", ["open", "closed"])],
            Strip = [.. strip.Select(Headed)],
            Work = Headed(work),
            Refit = [.. refit.Select(Headed)],
            FollowUps = [new PlanFollowUp("Retorque 4 × M8 × 25 flange bolt", "50 h of work", "evaporator_bolts", "evaporator", "22 ± 2 N·m (16 ± 1.5 lbf·ft)", ["torque wrench"])],
            Temporary =
            [
                new PlanTemporary("lifting sling", 1, "2 × strap", false, [2], [9]),
                new PlanTemporary("closing cap", 4, "evaporator", true, [3], [8]),
            ],
            Bags = [.. steps.SelectMany(step => step.Bags.Select(bag => (bag, step))).GroupBy(line => line.bag).Select(lines => Bag(lines.Key, strip, [.. lines.Select(line => line.step)], mirrors))],
            Discards = [new PlanDiscard("sun blind bracket", "The new headliner has **none**; see the parts list.")],
            Map = SampleMap.Evaporator,
            Sources = ["catalog/metric.proc", "ketterby-t40/cab.proc", "ketterby-t40/evaporator.proc"],
        };
    }

    private static PlanBag Bag(int number, ImmutableArray<PlanStage> strip, List<PlanStep> steps, Dictionary<int, int> mirrors) => new(
        number,
        strip.First(stage => stage.Steps.Any(step => step.Number == steps[0].Number)).Title,
        [.. steps.Select(step => new PlanBagLine(step.Text[(step.Text.IndexOf('×') + 2)..], step.Count, step.ItemTitle, step.Number, mirrors[step.Number]))],
        steps.Max(step => mirrors[step.Number]),
        "");
}
