namespace ProcScript.Analysis.Bolts;

/// <summary>
/// The nut factor K of T = K·d·F: how much of a torque friction takes up, by what is on the thread. Sources differ and the preload that
/// one torque gives scatters by ±25 to 30 % (rulesofthumb.info; read), so most are bands. One seller's chart (zipfastener.com; read) has far
/// wider bands than all others (dry 0.18 to 0.27, machine oil 0.10 to 0.26); it is followed only where no other source speaks.
/// </summary>
/// <param name="Low">The least that sources give.</param>
/// <param name="High">The most that sources give.</param>
/// <param name="Surface">The surface in a word.</param>
public sealed record NutFactor(double Low, double High, string Surface)
{
    /// <summary>The top of the band for stainless steel that is oiled or has locker: as for dry steel, at a friction of 0.2 (0.18 in the table).</summary>
    private const double WetStainless = 0.20;

    /// <summary>Plain steel without lubricant: 0.20 (read; five sources agree).</summary>
    public static NutFactor Dry { get; } = new(0.20, 0.20, "dry");

    /// <summary>Oiled: 0.15 (read; three sources agree) to 0.18 (read in one source, for light oil).</summary>
    public static NutFactor Oiled { get; } = new(0.15, 0.18, "oiled");

    /// <summary>Zinc or other plating: 0.16 to 0.22 (read; six sources, no two groups of which agree).</summary>
    public static NutFactor Plated { get; } = new(0.16, 0.22, "plated");

    /// <summary>Cadmium: 0.15 (stripmetalcoilprocessing.com; read) to 0.19 (zipfastener.com; read).</summary>
    public static NutFactor Cadmium { get; } = new(0.15, 0.19, "cadmium plated");

    /// <summary>Zinc flake: 0.16 to 0.32 (zipfastener.com, under a trade name; read), with a sealer that lubricates down to 0.12 (from memory).</summary>
    public static NutFactor ZincFlake { get; } = new(0.12, 0.32, "zinc flake");

    /// <summary>Phosphate with its oil: 0.15 to 0.22 (zipfastener.com; read).</summary>
    public static NutFactor Phosphated { get; } = new(0.15, 0.22, "phosphated");

    /// <summary>Waxed: 0.12 (read in one source).</summary>
    public static NutFactor Waxed { get; } = new(0.12, 0.12, "waxed");

    /// <summary>Anti-seize, molybdenum disulphide, graphite: 0.12 (stripmetalcoilprocessing.com; read); 0.10 and 0.16 from memory.</summary>
    public static NutFactor AntiSeize { get; } = new(0.10, 0.16, "anti-seize");

    /// <summary>
    /// Liquid thread locker: 0.14 (read in one table, on steel; it lubricates while it is wet) to 0.20 (from memory, the figure of a dry
    /// thread, which others use for it).
    /// </summary>
    public static NutFactor ThreadLocker { get; } = new(0.14, 0.20, "with thread locker");

    /// <summary>
    /// Stainless steel, which galls: 0.14 at a friction of 0.1 (mastik.pt and optimas.com, tables for A1, A2, A4; read). At 0.3 K itself is 0.38
    /// there, and elsewhere up to 0.50 (zipfastener.com; read), but then the twist takes so much of the bolt that no torque of the tables is more
    /// than 0.23·d times the load at 0.2 % strain: with some room 0.25.
    /// </summary>
    public static NutFactor Stainless { get; } = new(0.14, 0.25, "stainless steel");

    /// <summary>
    /// Any surface of carbon steel: up to 0.35, the most that a source gives (zipfastener.com, for zinc; read). With more friction the twist alone
    /// makes the bolt yield before: worked out, 0.37·d times the proof load where all of the section yields in torsion and the head takes its share.
    /// </summary>
    public static NutFactor Any { get; } = new(0.10, 0.35, "the most on any surface");

    /// <summary>
    /// The factor for what a catalog says of a thread. Oil outweighs all else; locker outweighs a plating, not a wax or a paste.
    /// </summary>
    /// <param name="oiled">Whether it goes in oiled.</param>
    /// <param name="threadLocker">Whether it goes in with thread locker.</param>
    /// <param name="coating">The coating in words; null for none.</param>
    /// <param name="stainless">Whether it is of stainless steel.</param>
    /// <returns>The factor; null for a coating that no source here speaks of, such as hot-dip zinc.</returns>
    public static NutFactor? For(bool oiled, bool threadLocker, string? coating, bool stainless = false)
    {
        var wet = oiled ? Oiled : threadLocker ? ThreadLocker : null;
        if (string.IsNullOrWhiteSpace(coating) || (stainless && Says("passivat")))
        {
            return stainless ? OnStainless(wet) : wet ?? Dry;
        }

        return oiled ? stainless ? OnStainless(wet) : Oiled
            : Says("wax") ? Waxed
            : Says("moly") || Says("MoS2") || Says("anti-seize") || Says("antiseize") || Says("graphite") ? AntiSeize
            : Says("hot") || Says("galvan") ? null
            : threadLocker ? ThreadLocker
            : Says("flake") ? ZincFlake
            : Says("cadmium") ? Cadmium
            : Says("phosphat") ? Phosphated
            : Says("zinc") || Says("plat") ? Plated
            : null;

        bool Says(string word) => coating.Contains(word, StringComparison.OrdinalIgnoreCase);
    }

    private static NutFactor OnStainless(NutFactor? wet) =>
        wet is null ? Stainless : wet with { High = WetStainless, Surface = $"stainless steel {wet.Surface}" };
}
