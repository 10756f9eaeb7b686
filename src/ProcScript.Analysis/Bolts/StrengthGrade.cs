using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace ProcScript.Analysis.Bolts;

/// <summary>The strength of a bolt by its marking and diameter.</summary>
/// <param name="Name">The class or grade as standards write it, such as <c>8.8</c>.</param>
/// <param name="Standard">The standard that has the figures.</param>
/// <param name="ProofStress">The stress in MPa that leaves no permanent set.</param>
/// <param name="TensileStrength">The least tensile strength in MPa.</param>
public sealed partial record StrengthGrade(string Name, string Standard, double ProofStress, double TensileStrength)
{
    /// <summary>Megapascals in a thousand pounds to the square inch; the pound-force and the inch are exact (NIST SP 811).</summary>
    private const double Ksi = 6.894757293168361;

    /// <summary>
    /// ISO 898-1, M1.6 to M39. Proof stresses from memory: with stress areas of three figures they give the 64 proof loads that were
    /// read (4.6 to 12.9, M4 to M16) within 0.5 %; 9.8 is not among these. Tensile strengths of 8.8, 10.9 and 12.9 read, the others from memory.
    /// Hot-dip galvanized M8 and M10 bear less (ISO 10684), which is not told from the marking.
    /// </summary>
    private static readonly ImmutableArray<Row> Iso898 =
    [
        new("4.6", 1.6, 39, 225, 400),
        new("4.8", 1.6, 39, 310, 420),
        new("5.6", 1.6, 39, 280, 500),
        new("5.8", 1.6, 39, 380, 520),
        new("6.8", 1.6, 39, 440, 600),
        new("8.8", 1.6, 16, 580, 800),
        new("8.8", 16, 39, 600, 830),
        new("9.8", 1.6, 16, 650, 900),
        new("10.9", 1.6, 39, 830, 1040),
        new("12.9", 1.6, 39, 970, 1220),
    ];

    /// <summary>
    /// ISO 3506-1 by kind of steel and class, the stress at 0.2 % strain and the tensile strength: A50, A70, A80 and 100 read in a
    /// table of a seller (monsterbolts.com); duplex, martensitic and ferritic steels, and that the cold-worked classes reach to M24, from memory.
    /// </summary>
    private static readonly ImmutableArray<Row> Iso3506 =
    [
        new("A50", 1.6, 39, 210, 500),
        new("A70", 1.6, 24, 450, 700),
        new("A80", 1.6, 24, 600, 800),
        new("A100", 1.6, 24, 800, 1000),
        new("D70", 1.6, 24, 450, 700),
        new("D80", 1.6, 24, 600, 800),
        new("D100", 1.6, 24, 800, 1000),
        new("C50", 1.6, 39, 250, 500),
        new("C70", 1.6, 39, 410, 700),
        new("C80", 1.6, 39, 640, 800),
        new("C110", 1.6, 39, 820, 1100),
        new("F45", 1.6, 24, 250, 450),
        new("F60", 1.6, 24, 410, 600),
    ];

    /// <summary>
    /// SAE J429 in inches and 1000 psi; read in summaries of several sellers (china-bolts.com, coxhardware.com, ferrofast.com). Grade 2
    /// holds for bolts of 6 in and shorter. The standard begins at 1/4 in; screws of a number size are sold to the same grades and are
    /// reckoned with the same stresses (common practice, no source).
    /// </summary>
    private static readonly ImmutableArray<Row> SaeJ429 =
    [
        new("1", 0.25, 1.5, 33, 60),
        new("2", 0.06, 0.75, 55, 74),
        new("2", 0.75, 1.5, 33, 60),
        new("5", 0.06, 1, 85, 120),
        new("5", 1, 1.5, 74, 105),
        new("8", 0.06, 1.5, 120, 150),
    ];

    /// <summary>The strongest class that bolts are made in: 12.9.</summary>
    internal static StrengthGrade StrongestMetric { get; } = new("12.9", "ISO 898-1", 970, 1220);

    /// <summary>The strongest class of stainless steel.</summary>
    internal static StrengthGrade StrongestStainless { get; } = new("stainless steel of class 100", "ISO 3506-1", 800, 1000) { IsStainless = true };

    /// <summary>The strongest inch screws in use, those with a hexagon socket: 140 000 psi and 180 000 psi (ASTM A574; from memory).</summary>
    internal static StrengthGrade StrongestInch { get; } = new("a socket screw of alloy steel", "ASTM A574", 140 * Ksi, 180 * Ksi);

    /// <summary>Whether it is stainless steel, which galls and so has a friction of its own.</summary>
    public bool IsStainless { get; private init; }

    /// <summary>The grade in words: <c>class 8.8</c>, <c>grade 5</c>, <c>A2-70</c>.</summary>
    public string Words => Standard == "ISO 898-1" ? $"class {Name}" : Name;

    /// <summary>Whether a marking names a stainless steel and not its class: <c>A2</c>.</summary>
    internal static bool IsBareSteel(string? marking) => BareSteel().IsMatch(Bare(marking));

    /// <summary>Whether a marking on a metric thread is that of a nut (ISO 898-2; from memory).</summary>
    internal static bool IsNutClass(string? marking, ThreadDesignation thread) =>
        thread.System == ThreadSystem.Metric && Bare(marking) is ("4" or "5" or "6" or "8" or "9" or "10" or "12" or "04" or "05");

    /// <summary>
    /// The strength that a marking means on a thread: property classes and stainless steel (<c>A2-70</c>) on metric threads, SAE grades on
    /// inch threads, with or without the word <c>class</c> or <c>grade</c>.
    /// </summary>
    /// <returns>
    /// The strength; null where the marking is not one of these or the standard does not have the diameter. So it is for nuts (<c>8</c> on
    /// a metric thread is a nut's class, ISO 898-2, and says nothing of the stud) and for a steel without its class (<c>A2</c>).
    /// </returns>
    /// <param name="marking">The class or grade as marked.</param>
    /// <param name="thread">The thread.</param>
    public static StrengthGrade? Find(string? marking, ThreadDesignation thread)
    {
        ArgumentNullException.ThrowIfNull(thread);
        var name = Bare(marking);
        return thread.System == ThreadSystem.Metric
            ? Stainless().Match(name) is { Success: true } steel
                ? Find(Iso3506, steel.Groups["family"].Value + steel.Groups["class"].Value, thread.Diameter) is { } stainless
                    ? new(name, "ISO 3506-1", stainless.Proof, stainless.Tensile) { IsStainless = true }
                    : null
                : Find(Iso898, name, thread.Diameter) is { } metric ? new(metric.Name, "ISO 898-1", metric.Proof, metric.Tensile) : null
            : Find(SaeJ429, name, Math.Round(thread.Diameter / ThreadDesignation.Inch, 6)) is { } inch
                ? new($"grade {inch.Name}", "SAE J429", inch.Proof * Ksi, inch.Tensile * Ksi)
                : null;
    }

    private static string Bare(string? marking)
    {
        var text = (marking ?? "").Trim();
        foreach (var word in (string[])["grade ", "class "])
        {
            if (text.StartsWith(word, StringComparison.OrdinalIgnoreCase))
            {
                return text[word.Length..].Trim();
            }
        }

        return text;
    }

    [GeneratedRegex("^(?<family>[ACDF])[1-8]L?-(?<class>[1-9][0-9]{1,2})$", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant)]
    private static partial Regex Stainless();

    [GeneratedRegex("^[ACDF][1-8]L?$", RegexOptions.CultureInvariant)]
    private static partial Regex BareSteel();

    /// <summary>The first row that reaches as far up as the diameter: each begins where the one before it ends.</summary>
    private static Row? Find(ImmutableArray<Row> rows, string name, double diameter) =>
        rows.FirstOrDefault(row => row.Name == name && diameter >= row.From && diameter <= row.To);

    private sealed record Row(string Name, double From, double To, double Proof, double Tensile);
}
