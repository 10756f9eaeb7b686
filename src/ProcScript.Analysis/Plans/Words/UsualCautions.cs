using System.Collections.Frozen;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Plans.Words;

/// <summary>
/// The usual caution for each hazard mark, in our own words; common practice, no source. The signal words have the meanings of ANSI Z535:
/// what will kill is a danger, what could kill or maim a warning, what burns a hand a caution.
/// </summary>
internal static class UsualCautions
{
    private static readonly FrozenDictionary<Hazard, UsualCaution> Cautions = new Dictionary<Hazard, UsualCaution>
    {
        [Hazard.Restraint] = new(
            SignalWord.Warning,
            "restraint system",
            "A restraint module can fire. Wait as the manufacturer says with the supply isolated. Never probe it with a meter. Carry it with its "
                + "face up and away from your body. No power until every plug is mated. Trained people only.",
            ["restraint", "airbag", "air bag", "pretensioner", "igniter", "squib"]),
        [Hazard.HighVoltage] = new(
            SignalWord.Danger,
            "high voltage",
            "High voltage kills. Qualified people only. Whoever works keeps the service plug on their person. Prove zero volts at both poles, "
                + "with a meter shown live, dead, live.",
            ["high voltage", "volt", " V "]),
        [Hazard.Pressure] = new(
            SignalWord.Warning,
            "pressure",
            "What is under pressure bursts out and pierces skin and eyes. Let it off and read the gauge before you open anything. Keep your face "
                + "away. Wear eye protection.",
            ["pressure", "burst", "spray", "jet"]),
        [Hazard.Spring] = new(
            SignalWord.Warning,
            "loaded spring",
            "A loaded spring flies off and can blind. Hold it back before you free it. Stay out of its way. Wear eye protection.",
            ["spring"]),
        [Hazard.HotSurface] = new(
            SignalWord.Caution,
            "hot surface",
            "Hot enough to burn. Let it cool, or wear heat-proof gloves.",
            ["hot", "burn", "scald"]),
        [Hazard.SuspendedLoad] = new(
            SignalWord.Warning,
            "suspended load",
            "It hangs and can fall. Bear it by a support or a hoist before the last of what holds it comes off. Nobody stands under it.",
            ["fall", "drop", "crush"]),
        [Hazard.Refrigerant] = new(
            SignalWord.Warning,
            "refrigerant",
            "Refrigerant freezes skin and eyes and takes the place of air. Never vent it: recover it by an approved machine. Certified people only.",
            ["refrigerant", "freez", "frost"]),
    }.ToFrozenDictionary();

    /// <summary>The caution for a hazard.</summary>
    public static UsualCaution Of(Hazard hazard) => Cautions[hazard];

    /// <summary>
    /// Whether an author's alert says the same already: it speaks of the hazard, with a word at least as strong. Only words of English are
    /// known; an alert in another language leaves the usual one beside it, which does no harm.
    /// </summary>
    public static bool IsSaidBy(Alert alert, Hazard hazard) =>
        alert.Word <= Of(hazard).Word && Of(hazard).Words.Any(word => alert.Text.Contains(word, StringComparison.OrdinalIgnoreCase));
}

/// <summary>A usual caution.</summary>
/// <param name="Word">The signal word.</param>
/// <param name="Title">What the hazard is called.</param>
/// <param name="Text">What it says.</param>
/// <param name="Words">Words that an alert of the same kind has.</param>
internal sealed record UsualCaution(SignalWord Word, string Title, string Text, string[] Words);
