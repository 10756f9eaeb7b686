namespace ProcScript.Analysis.Bolts;

/// <summary>
/// The nut factor K of T = K·d·F: how much of a torque friction takes up, by what is on the thread. Sources differ and the preload that
/// one torque gives scatters by ±25 to 30 % (rulesofthumb.info; read), so most are bands.
/// </summary>
/// <param name="Low">The least that sources give.</param>
/// <param name="High">The most that sources give.</param>
/// <param name="Surface">The surface in a word.</param>
public sealed record NutFactor(double Low, double High, string Surface)
{
    /// <summary>Plain steel without lubricant: 0.20 (read; five sources agree).</summary>
    public static NutFactor Dry { get; } = new(0.20, 0.20, "dry");

    /// <summary>Oiled: 0.15 (read; three sources agree). One gives 0.18 for light oil; the lower figure keeps the bolt on the safe side.</summary>
    public static NutFactor Oiled { get; } = new(0.15, 0.15, "oiled");

    /// <summary>Zinc or other plating: 0.16 to 0.22 (read; six sources, no two groups of which agree).</summary>
    public static NutFactor Plated { get; } = new(0.16, 0.22, "plated");

    /// <summary>Waxed: 0.12 (read in one source).</summary>
    public static NutFactor Waxed { get; } = new(0.12, 0.12, "waxed");

    /// <summary>
    /// Liquid thread locker: 0.14 (read in one table, on steel; it lubricates while it is wet) to 0.20 (from memory, the figure of a dry
    /// thread, which others use for it).
    /// </summary>
    public static NutFactor ThreadLocker { get; } = new(0.14, 0.20, "with thread locker");

    /// <summary>The factor for what a catalog says of a thread. Oil outweighs all else; locker outweighs a plating, not a wax.</summary>
    /// <param name="oiled">Whether it goes in oiled.</param>
    /// <param name="threadLocker">Whether it goes in with thread locker.</param>
    /// <param name="coating">The coating in words; null for none.</param>
    /// <returns>The factor; null for a coating that no source here speaks of, such as zinc flake or hot-dip zinc.</returns>
    public static NutFactor? For(bool oiled, bool threadLocker, string? coating)
    {
        bool Says(string word) => coating!.Contains(word, StringComparison.OrdinalIgnoreCase);
        return oiled ? Oiled
            : string.IsNullOrWhiteSpace(coating) ? threadLocker ? ThreadLocker : Dry
            : Says("wax") ? Waxed
            : Says("flake") || Says("hot") || Says("galvan") ? null
            : threadLocker ? ThreadLocker
            : Says("zinc") || Says("plat") ? Plated
            : null;
    }
}
