namespace ProcScript.Cli.Tests.Seeded;

/// <summary>The mistakes that are seeded.</summary>
internal static class FaultKinds
{
    private const string Undo = "undo module_bolts_#";
    private const string How = "how \"Crosswise";
    private const string Warning = "warning \"Hot coolant";
    private const string Coolant = "    warning \"Hot coolant burns. Let it cool first.\"";
    private const string Check = "check \"No leak";
    private const string Measure = "measure \"flow\"";

    /// <summary>Mistakes of a text, which are found whatever the machine is like.</summary>
    public static IReadOnlyList<FaultKind> InText { get; } =
    [
        new("PRC1001", Undo, "    undoo module_bolts_#"),
        new("PRC1002", "stage \"Trim\"", "  stage \"Trim\""),
        new("PRC1003", "store \"bench", "      store \"bench, face down"),
        new("PRC1004", Undo, "    undo module_bolts_# §"),
        new("PRC5091", How, "      how \"TODO\""),
        new("PRC5092", How, "      how \"Go crosswise from the middle outwards in three rounds and turn each of the four bolts by no more than a quarter of a turn in each round.\""),
        new("PRC5094", Warning, "    caution \"Sharp edges cut. Keep clear of them.\"", Coolant) { At = 1 },
        new("PRC5101", How, "      how \"Loosen the bolts crosswise and remove the washers.\""),
        new("PRC5102", How, "      how \"The bolts should be loosened crosswise.\""),
        new("PRC5103", How, "      how \"Turn crosswise if the cover bends.\""),
        new("PRC5104", Warning, "    caution \"Hot coolant kills. Let it cool first.\""),
        new("PRC5105", Warning, "    danger \"Dirt damages the seals. Wipe the unions first.\""),
        new("PRC5106", Warning, "    warning \"Hot coolant burns.\""),
        new("PRC5107", Warning, "    warning \"Hot coolant burns. Undo the bolts slowly.\""),
        new("PRC5108", How, "      how \"Turn crosswise as required.\""),
    ];

    /// <summary>Mistakes of names, of the strip, of the refit and of comments, which are found where the machine is sound.</summary>
    public static IReadOnlyList<FaultKind> InSteps { get; } =
    [
        new("PRC1101", Undo, "    undo module_boltz_#"),
        new("PRC1104", "use \"machine.proc\"", "use \"machine.proc\"", "use \"gone.proc\"") { At = 1 },
        new("PRC1105", "use \"machine.proc\"", "use \"machine.proc\"", "use \"../../../elsewhere.proc\"") { At = 1 },
        new("PRC1110", Undo, "    undo module_bolts_#[left]"),
        new("PRC1112", "people 2", "      people 2", "      people 2") { At = 1 },
        new("PRC1201", Measure, "    measure \"flow\" expect 0.5 .. 2.0 L/mim"),
        new("PRC1202", Measure, "    measure \"flow\" expect 0.5 L/min .. 2.0 bar"),
        new("PRC3001", Undo) { Later = "remove module_#" },
        new("PRC3003", "release cover_caps_#") { Later = "undo cover_bolts_#" },
        new("PRC3004", "isolate battery") { Later = "unplug module_plug_#" },
        new("PRC3005", "empty coolant") { Later = "disconnect module_hoses_#" },
        new("PRC3006", Undo, "    undo module_bolts_#", "    undo module_bolts_#") { At = 1 },
        new("PRC3007", Undo, "    unplug module_bolts_#"),
        new("PRC3008", Undo, "    undo 9 of module_bolts_#"),
        new("PRC3011", "remove cover_#", "    aside cover_# {"),
        new("PRC3012", Undo, "    undo module_bolts_#", "    replace module_#") { At = 1 },
        new("PRC3014", "goal replace module_#", "  goal replace module_#", "  goal remove harness") { At = 1 },
        new("PRC3017", Undo, "    undo module_bolts_#", "    fit cover_#") { At = 1 },
        new("PRC3019", Undo, "    undo module_bolts_# in background"),
        new("PRC4002", Check, "    check \"No leak at the unions.\" after fit harness"),
        new("PRC4003", Check, "    check \"No leak at the unions.\" after fit module_#", "    fit cover_# before fit module_#") { At = 1 },
        new("PRC4008", Check, "    check \"No leak at the unions.\" after remove module_#"),
        new("PRC5081", Undo, "    undo module_bolts_#", "    set lift to up") { At = 1 },
        new("PRC7001", Undo, "    undo module_bolts_#", "    // proc: allow PRC3006", "    undo module_bolts_#") { At = 1 },
        new("PRC7003", Undo, "    // proc: allow PRC9006 because \"They turn with it.\"", "    undo module_bolts_#"),
        new(
            "PRC7004",
            Undo,
            "    undo module_bolts_#",
            "    // proc: allow done-twice until 2020-01-31 because \"They turn with it.\"",
            "    // proc: allow done-twice because \"They turn with it.\"",
            "    undo module_bolts_#") { At = 1 },
        new("PRC7005", Undo, "    undo module_bolts_#", "    // proc: allow done-twice until summer because \"They turn with it.\"", "    undo module_bolts_#") { At = 1 },
    ];

    /// <summary>Mistakes of a machine; its procedures cannot be run then.</summary>
    public static IReadOnlyList<FaultKind> InMachine { get; } =
    [
        new("PRC1102", "part harness", "  part harness \"main harness\"", "  part harness \"second harness\"") { At = 1 },
        new("PRC1205", "held by 3 m10x30", "    held by 0 m10x30 as module_bolts_# at \"lower flange\""),
        new("PRC1206", "mass 2.5 kg", "    mass 0 kg"),
        new("PRC2001", "mass 2.5 kg", "    mass 2.5 kg", "    behind module_#") { At = 1 },
        new("PRC2004", "wired by 1 two_way", "    wired by 1 two_way as module_plug_# { to module_#  on battery }"),
        new("PRC2009", "part harness", "  held by 4 m8x25 as stray_bolts", "  part harness \"main harness\""),
        new("PRC2012", "behind cover_#", "    behind module_#"),
    ];
}
