using System.Collections.Immutable;

namespace ProcScript.Model.Machines;

/// <summary>The words for hazards in a text.</summary>
public static class HazardWords
{
    private static readonly ImmutableArray<(Hazard Hazard, string Word)> Words =
    [
        (Hazard.Restraint, "restraint"),
        (Hazard.HighVoltage, "high_voltage"),
        (Hazard.Pressure, "pressure"),
        (Hazard.Spring, "spring"),
        (Hazard.HotSurface, "hot_surface"),
        (Hazard.Scald, "scald"),
        (Hazard.SuspendedLoad, "suspended_load"),
        (Hazard.Refrigerant, "refrigerant"),
        (Hazard.Static, "static"),
    ];

    /// <summary>Every word.</summary>
    public static ImmutableArray<string> All { get; } = [.. Words.Select(one => one.Word)];

    /// <summary>The word for a hazard.</summary>
    public static string Of(Hazard hazard) => Words.First(one => one.Hazard == hazard).Word;

    /// <summary>The hazard that a word names; null where it names none.</summary>
    public static Hazard? Find(string word) => Words.Where(one => one.Word == word).Select(one => (Hazard?)one.Hazard).FirstOrDefault();
}
