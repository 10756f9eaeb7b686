using System.Collections.Frozen;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Plans.Words;

/// <summary>
/// The usual caution for each hazard mark, in our own words; common practice, no source. The signal words have the meanings of ANSI Z535:
/// what will kill is a danger, what could kill or maim a warning, what burns a hand a caution, what ruins a board a notice. Each has a text
/// for letting go of what is held, closed or live, and one for putting it back under load.
/// </summary>
internal static class UsualCautions
{
    private static readonly FrozenDictionary<Hazard, UsualPair> Pairs = new Dictionary<Hazard, UsualPair>
    {
        [Hazard.Restraint] = new(
            SignalWord.Warning,
            "restraint system",
            "A restraint module can fire. Wait as the manufacturer says with the supply isolated. Never probe it with a meter. Carry it with its "
                + "face up and away from your body. Trained people only.",
            "A restraint module can fire once it is connected. No power until every plug is mated, and nobody inside when it comes back. Never "
                + "probe it with a meter. Keep out of its way. Trained people only.",
            ["restraint", "airbag", "air bag", "pretensioner", "igniter", "squib"]),
        [Hazard.HighVoltage] = Voltage(
            "High voltage kills. Qualified people only. Lock off what cuts it off, and keep the key on your person. Prove zero volts at every "
                + "pole and to earth, with a meter shown live, dead, live.",
            "High voltage kills. Qualified people only. It stays locked off until every terminal is tight and every cover on."),
        [Hazard.Pressure] = new(
            SignalWord.Warning,
            "pressure",
            "What is under pressure bursts out and pierces skin and eyes. Let it off and read the gauge before you open anything. Keep your face "
                + "away. Wear eye protection.",
            "Under pressure, what is not tight bursts out and pierces skin and eyes. Close everything first. Let the pressure in slowly. Keep "
                + "your face away. Wear eye protection.",
            ["pressure", "burst", "spray", "jet"]),
        [Hazard.Spring] = new(
            SignalWord.Warning,
            "loaded spring",
            "A loaded spring flies off and can blind. Hold it back before you free it. Stay out of its way. Wear eye protection.",
            "A spring flies off while it is loaded and can blind. Hold it back until it is seated and secured. Stay out of its way. Wear eye "
                + "protection.",
            ["spring"]),
        [Hazard.HotSurface] = new(
            SignalWord.Caution,
            "hot surface",
            "Hot enough to burn. Let it cool, or wear heat-proof gloves.",
            "Power is back, and it gets hot enough to burn. Keep your hands off it, or let it cool first.",
            ["hot", "burn", "scald"]),
        [Hazard.Scald] = new(
            SignalWord.Warning,
            "hot liquid or steam",
            "What is hot inside runs or blows out and scalds to the bone. Let it cool, and let the pressure off, before you open anything. Stand to "
                + "the side. Wear gloves and a face shield.",
            "What is not tight scalds once it is hot again. Close everything first. Let heat and pressure in slowly. Stand to the side.",
            ["scald", "steam"]),
        [Hazard.SuspendedLoad] = new(
            SignalWord.Warning,
            "suspended load",
            "It hangs and can fall. Bear it by a support or a hoist before the last of what holds it comes off. Nobody stands under it.",
            "It hangs and can fall until all that holds it is closed. Leave the support or the hoist where it is until then. Nobody stands under it.",
            ["fall", "drop", "crush"]),
        [Hazard.Refrigerant] = new(
            SignalWord.Warning,
            "refrigerant",
            "Refrigerant freezes skin and eyes and takes the place of air. Never vent it: recover it by an approved machine. Certified people only.",
            "Refrigerant freezes skin and eyes and takes the place of air. Charge it by an approved machine, once every joint is closed and the "
                + "circuit is proved tight. Certified people only.",
            ["refrigerant", "freez", "frost"]),
        [Hazard.Static] = new(
            SignalWord.Notice,
            "electrostatic discharge",
            "A discharge that nobody feels ruins electronics. Put the wrist strap on, earthed, before the first touch. Lay boards on an earthed mat.",
            "A discharge that nobody feels ruins electronics. Wear the wrist strap, earthed, until the last plug is in. Leave a new board in its "
                + "bag until it goes in.",
            ["electrostatic", "static electricity", "static charge", "wrist strap"]),
    }.ToFrozenDictionary();

    private static readonly UsualPair Battery = Voltage(
        "High voltage kills. Qualified people only. Whoever works keeps the service plug on their person. Prove zero volts at both poles, with a "
            + "meter shown live, dead, live.",
        "High voltage kills. Qualified people only. The service plug stays on the person who works until every terminal is tight and every cover on.");

    private static readonly UsualPair Mains = Voltage(
        "Mains voltage kills. Qualified people only. Lock the isolator off, and keep its key on your person. Prove zero volts between all "
            + "conductors and to earth, with a meter shown live, dead, live.",
        "Mains voltage kills. Qualified people only. Connect earth first. The isolator stays locked off until every terminal is tight and every "
            + "cover on.");

    /// <summary>The caution before a hazard is let go of.</summary>
    public static UsualCaution ForLettingGo(Hazard hazard, MachineItem item) => new(Pair(hazard, item), IsForLettingGo: true);

    /// <summary>The caution before it is put back under load.</summary>
    public static UsualCaution ForPuttingBack(Hazard hazard, MachineItem item) => new(Pair(hazard, item), IsForLettingGo: false);

    private static UsualPair Pair(Hazard hazard, MachineItem item) => (hazard, EnergySorts.VoltageOf(item)) switch
    {
        (Hazard.HighVoltage, VoltageSource.Battery) => Battery,
        (Hazard.HighVoltage, VoltageSource.Mains) => Mains,
        _ => Pairs[hazard],
    };

    private static UsualPair Voltage(string lettingGo, string puttingBack) =>
        new(SignalWord.Danger, "high voltage", lettingGo, puttingBack, ["high voltage", "volt", " V "]);
}

/// <summary>The usual cautions for one hazard.</summary>
/// <param name="Word">The signal word.</param>
/// <param name="Title">What the hazard is called.</param>
/// <param name="LettingGo">What is said before it is let go of.</param>
/// <param name="PuttingBack">What is said before it is put back under load.</param>
/// <param name="Words">What words of an author's alert of the same kind begin with.</param>
internal sealed record UsualPair(SignalWord Word, string Title, string LettingGo, string PuttingBack, string[] Words);

/// <summary>A usual caution.</summary>
/// <param name="Kind">What is usual of the hazard.</param>
/// <param name="IsForLettingGo">Whether it is for letting go; else for putting back.</param>
internal sealed record UsualCaution(UsualPair Kind, bool IsForLettingGo)
{
    /// <summary>The signal word.</summary>
    public SignalWord Word => Kind.Word;

    /// <summary>What the hazard is called.</summary>
    public string Title => Kind.Title;

    /// <summary>What it says.</summary>
    public string Text => IsForLettingGo ? Kind.LettingGo : Kind.PuttingBack;

    /// <summary>
    /// Whether an author's alert says the same already: it speaks of the hazard, with a word at least as strong. Only words of English are
    /// known; an alert in another language leaves the usual one beside it, which does no harm.
    /// </summary>
    public bool IsSaidBy(Alert alert) => alert.Word <= Word && Kind.Words.Any(word => HasWordFrom(alert.Text, word));

    /// <summary>Whether a word of the text begins so; a photo is not hot.</summary>
    private static bool HasWordFrom(string text, string beginning)
    {
        for (var at = text.IndexOf(beginning, StringComparison.OrdinalIgnoreCase); at >= 0; at = text.IndexOf(beginning, at + 1, StringComparison.OrdinalIgnoreCase))
        {
            if (at == 0 || !char.IsLetter(text[at]) || !char.IsLetter(text[at - 1]))
            {
                return true;
            }
        }

        return false;
    }
}
