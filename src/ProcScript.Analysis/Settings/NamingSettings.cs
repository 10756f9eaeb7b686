using System.Collections.Immutable;

namespace ProcScript.Analysis.Settings;

/// <summary>How a shop names things: a row for each sort of name.</summary>
public static class NamingSettings
{
    /// <summary>The names of machines.</summary>
    public static ChoiceSetting<NameStyle> Machines { get; } = Row("machines", "machines");

    /// <summary>The names of procedures.</summary>
    public static ChoiceSetting<NameStyle> Procedures { get; } = Row("procedures", "procedures");

    /// <summary>The names of parts.</summary>
    public static ChoiceSetting<NameStyle> Parts { get; } = Row("parts", "parts");

    /// <summary>The names of joints.</summary>
    public static ChoiceSetting<NameStyle> Joints { get; } = Row("joints", "joints, covers and locks");

    /// <summary>The names of what else a machine has.</summary>
    public static ChoiceSetting<NameStyle> Services { get; } = Row("services", "energies, fluids, controls and options");

    /// <summary>The names of catalog entries.</summary>
    public static ChoiceSetting<NameStyle> Catalog { get; } = Row("catalog", "tools, supplies and kinds");

    /// <summary>All of them, in the order in which they are told.</summary>
    public static ImmutableArray<ChoiceSetting<NameStyle>> All { get; } = [Machines, Procedures, Parts, Joints, Services, Catalog];

    private static ChoiceSetting<NameStyle> Row(string key, string things) => new()
    {
        Key = "names." + key,
        BuiltIn = NameStyle.Any,
        Words =
        [
            ("any", NameStyle.Any), ("seat_bolts", NameStyle.Snake), ("seatBolts", NameStyle.Camel), ("SeatBolts", NameStyle.Pascal), ("SEAT_BOLTS", NameStyle.Upper),
        ],
        What = $"How the names of {things} are written, by an example of two words. Numbers stay where they are.",
        Rules = ["PRC6008"],
        IsOfLibrary = true,
    };
}
