using ProcScript.Analysis.Plans;

namespace ProcScript.Cards.Tests.Samples;

/// <summary>The strip of the sample job: an invented tractor, an evaporator in the roof of its cab.</summary>
internal static class SampleStrip
{
    public static readonly (string Stage, PlanStep[] Steps)[] Stages =
    [
        ("Make safe",
        [
            Step("empty", "Empty refrigerant R-134a", "refrigerant", "refrigerant R-134a", 1080) with
            {
                How = ["Recover with a **certified** machine. Write down what came out."],
                Alerts = [new PlanAlert("danger", "Refrigerant in a closed cab drives out the air you breathe. Open both doors and the rear window *before* you connect."),
                    new PlanAlert("warning", "Recovered refrigerant can still freeze skin. Wear gloves and eye protection.")],
                Tools = ["recovery machine", "low-side coupler"],
                Ppe = ["gloves against cold", "eye protection"],
                InBackground = true,
            },
            Step("set", "Set steering column to down", "column", "steering column", 10),
            Step("isolate", "Isolate 12 V battery", "battery", "12 V battery", 90) with
            {
                How = ["Take the negative cable off its post and cover the post."],
                Alerts = [new PlanAlert("caution", "A spanner across the posts burns. Take rings and watch off.")],
                Tools = ["10 mm spanner"],
                Checks = ["The dome lamp stays dark with the door open."],
                Reading = new PlanReading("Voltage at the fuse box", "at most 0.5 V"),
            },
        ]),
        ("Seat",
        [
            Step("release", "Release 4 × snap-on bolt cap", "seat_caps", "snap-on bolt caps of the seat", 12) with { Where = "over the seat bolts", Count = 4, Tools = ["plastic trim lever"], Bags = [1] },
            Step("undo", "Undo 4 × M10 × 30 bolt", "seat_bolts", "seat bolts", 32) with
            {
                Where = "base, two front and two rear", Count = 4, Tools = ["16 mm socket", "600 mm extension"], Bags = [1], Torque = "",
            },
            Step("aside", "Put operator seat aside", "seat", "operator seat", 20) with { How = ["Tilt the seat rearwards."] },
            Step("unplug", "Unplug 1 × 2-way connector", "seat_switch", "seat switch connector", 5) with { Where = "under the cushion, left", Count = 1, How = ["Press the tab, pull the body, never the wires."] },
            Step("remove", "Remove operator seat", "seat", "operator seat", 60) with
            {
                Kilograms = 31, People = 2, Store = "bench, on its back",
                Alerts = [new PlanAlert("warning", "The seat weighs 31 kg and its springs push the frame apart when it is turned over. Keep fingers out of the linkage.")],
            },
        ]),
        ("Trim and headliner",
        [
            Step("release", "Release 1 × snap-on bolt cap", "grab_cap", "cap of the grab handle bolt", 3) with { Where = "left pillar", Count = 1, Tools = ["plastic trim lever"], Bags = [2] },
            Step("undo", "Undo 1 × M8 × 25 flange bolt", "grab_bolt", "grab handle bolt", 8) with { Where = "left pillar, below the cap", Count = 1, Tools = ["13 mm socket"], Bags = [2] },
            Step("release", "Release 3 × quarter-turn retainer", "pillar_clips[left]", "left pillar trim retainers", 9) with { Count = 3, How = ["Turn 90° and pull the panel away. The retainer stays in the frame."] },
            Step("remove", "Remove left pillar trim", "pillar_trim[left]", "left pillar trim", 30) with { Store = "parts shelf, face up" },
            Step("release", "Release 3 × quarter-turn retainer", "pillar_clips[right]", "right pillar trim retainers", 9) with { Count = 3, How = ["Turn 90° and pull the panel away. The retainer stays in the frame."] },
            Step("remove", "Remove right pillar trim", "pillar_trim[right]", "right pillar trim", 30) with { Store = "parts shelf, face up" },
            Step("release", "Release 10 × push-in panel clip", "liner_clips", "headliner clips", 30) with
            {
                Where = "whole edge of the headliner", Count = 10, Tools = ["plastic trim lever"], Bags = [2],
                How = ["Front row first.\n\n1. Four at the windscreen\n2. Two at each side\n3. Two at the rear, which are the hard ones and break if the lever is turned instead of pulled"],
                Scrap = "clips whose barbs are bent",
            },
            Step("aside", "Put headliner aside", "headliner", "headliner", 20) with { How = ["Lower the rear edge."] },
            Step("unplug", "Unplug 1 × 2-way connector", "dome_plug", "dome lamp connector", 5) with { Where = "above the headliner, middle", Count = 1 },
            Step("remove", "Remove headliner", "headliner", "headliner", 60) with
            {
                Photos = ["Drain tube routing over the header", "Harness clips at the rear header"], Store = "on blankets, face down",
                Figures = [new PlanFigure("img/headliner.svg", "The lip hooks into the rear header")],
                Marks = ["A pencil line across headliner and pillar."], Ticks = ["Keep in order: lay it out as it sat, apart from its like."], Notes = [new PlanReading("Measure the thickness", "")],
                Alerts = [new PlanAlert("notice", "The headliner creases for good when it is bent. Carry it flat, by two corners each side.")], People = 2, Kilograms = 6.5,
            },
        ]),
        ("Roof",
        [
            Step("unplug", "Unplug 1 × 2-way connector", "beacon_plug", "beacon connector", 5) with { Count = 1, Where = "right rear, inside" },
            Step("cut", "Cut 1 × roof seal bead", "roof_seal", "roof seal", 120) with
            {
                Count = 1, Tools = ["cutting wire, 1 m"], Scrap = "the old bead",
                Alerts = [new PlanAlert("caution", "The wire cuts. Handles on both ends, gloves on both hands.")],
                How = ["Start at a rear corner. Two people, one inside and one outside, pull in turn."], People = 2,
            },
            Step("undo", "Undo 8 × M8 × 25 flange bolt", "roof_bolts", "roof bolts", 64) with { Count = 8, Where = "outer edge", Tools = ["13 mm socket", "ratchet, 3/8 in"], Bags = [3] },
            Step("support", "Support roof panel", "roof", "roof panel", 60) with { Tools = ["roof stand"] },
            Step("remove", "Remove roof panel", "roof", "roof panel", 90) with
            {
                People = 2, Kilograms = 14.2, Store = "roof stand, upside down",
                Alerts = [new PlanAlert("danger", "The panel catches the wind and throws the person who holds it off the step. Indoors only, doors shut.")],
            },
        ]),
        ("Evaporator",
        [
            Step("disconnect", "Disconnect 2 × bolted A/C union", "evap_unions", "evaporator unions", 60) with
            {
                Count = 2, Tools = ["10 mm spanner", "backing spanner 22 mm"], WaitsFor = [1], Scrap = "4 × 10.8 mm HNBR O-ring",
                How = ["Hold the union with the backing spanner. Cap both ends at once."],
                Photos = ["Both unions, from the rear, before they are opened"],
            },
            Step("undo", "Undo 4 × M8 × 25 flange bolt, black", "evap_bolts", "evaporator bolts", 32) with { Count = 4, Where = "corners of the case", Tools = ["13 mm socket"], Bags = [4], Which = new PlanWhich("M8 × 25 flange bolt, black", 4, [new PlanLookAlike("M8 × 25 flange bolt", 3)]) },
            Step("unplug", "Unplug 1 × 4-way connector", "blower_plug", "blower connector", 5) with { Count = 1, Where = "left of the case" },
            Step("remove", "Remove evaporator", "evaporator", "evaporator", 30) with { Kilograms = 4, Store = "scrap pallet" },
            Step("set", "Set heater valve to closed", "heater_valve", "heater valve", 10) with { Derived = true, Because = "the refit of the evaporator needs heater valve at closed" },
        ]),
    ];

    public static readonly PlanStep[] Work =
    [
        Step("replace", "Replace evaporator", "evaporator", "evaporator", 120) with { NewParts = [new PlanNewPart("evaporator", 1, 0)], How = ["Compare old and new: ports, sensor pocket, feet."] },
        Step("clean", "Clean evaporator case", "case", "evaporator case", 600) with { InBackground = true, Consumes = ["0.2 L of coil cleaner"] },
        Step("inspect", "Inspect drain tubes", "drains", "drain tubes", 120) with { Checks = ["No kink, no leaves, `clear` from end to end."] },
        Step("measure", "Measure drain tube flow", "", "", 60) with { Reading = new PlanReading("Drain tube flow", "0.5 to 2.0 L/min"), Tools = ["measuring jug, 1 L"] },
        Step("task", "Write the new evaporator's serial number on the work order", "", "", 30),
    ];

    private static PlanStep Step(string verb, string text, string item, string title, double seconds) => new()
    {
        Number = 0,
        Verb = verb,
        Text = text,
        Item = item,
        ItemTitle = title,
        Seconds = seconds,
        Source = new PlanSource("ketterby-t40/evaporator.proc", 12, 5),
    };
}
