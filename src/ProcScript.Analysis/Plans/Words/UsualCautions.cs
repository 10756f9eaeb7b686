using System.Collections.Frozen;
using System.Collections.Immutable;
using ProcScript.Analysis.Messages;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Plans.Words;

/// <summary>
/// The usual caution for each hazard mark, whose words stand among the messages; common practice, no source. The signal words have the meanings of ANSI Z535:
/// what will kill is a danger, what could kill or maim a warning, what burns a hand a caution, what ruins a board a notice. Each has a text
/// for letting go of what is held, closed or live, and one for putting it back under load.
/// </summary>
internal static class UsualCautions
{
    private static readonly FrozenDictionary<Hazard, UsualPair> Pairs = new Dictionary<Hazard, UsualPair>
    {
        [Hazard.Restraint] = new(SignalWord.Warning, "restraint", ["restraint", "airbag", "air bag", "pretensioner", "igniter", "squib"]),
        [Hazard.HighVoltage] = Voltage("high-voltage"),
        [Hazard.Pressure] = new(SignalWord.Warning, "pressure", ["pressure", "burst", "spray", "jet"]) { Off = [UsualGear.Eyes], Back = [UsualGear.Eyes] },
        [Hazard.Spring] = new(SignalWord.Warning, "spring", ["spring"]) { Off = [UsualGear.Eyes], Back = [UsualGear.Eyes] },
        [Hazard.HotSurface] = new(SignalWord.Caution, "hot-surface", ["hot", "burn", "scald"]),
        [Hazard.Scald] = new(SignalWord.Warning, "scald", ["scald", "steam"]) { Off = [UsualGear.HotHands, UsualGear.Face] },
        [Hazard.SuspendedLoad] = new(SignalWord.Warning, "suspended-load", ["fall", "drop", "crush"]),
        [Hazard.Refrigerant] = new(SignalWord.Warning, "refrigerant", ["refrigerant", "freez", "frost"]),
        [Hazard.Static] = new(SignalWord.Notice, "static", ["electrostatic", "static electricity", "static charge", "wrist strap"])
        {
            Off = [UsualGear.Strap],
            Back = [UsualGear.Strap],
        },
    }.ToFrozenDictionary();

    private static readonly UsualPair Battery = Voltage("battery-voltage");

    private static readonly UsualPair Mains = Voltage("mains-voltage");

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

    private static UsualPair Voltage(string name) => new(SignalWord.Danger, name, ["high voltage", "volt", " V "]);
}

/// <summary>The usual cautions for one hazard.</summary>
/// <param name="Word">The signal word.</param>
/// <param name="Name">What its messages are called by: what the hazard is called, what is said before it is let go of and before it is put back under load.</param>
/// <param name="Words">What words of an author's alert of the same kind begin with.</param>
internal sealed record UsualPair(SignalWord Word, string Name, string[] Words)
{
    /// <summary>What its text for letting go says to wear.</summary>
    public ImmutableArray<UsualGear> Off { get; init; } = [];

    /// <summary>What its text for putting back says to wear.</summary>
    public ImmutableArray<UsualGear> Back { get; init; } = [];
}

/// <summary>A usual caution.</summary>
/// <param name="Kind">What is usual of the hazard.</param>
/// <param name="IsForLettingGo">Whether it is for letting go; else for putting back.</param>
internal sealed record UsualCaution(UsualPair Kind, bool IsForLettingGo)
{
    /// <summary>The signal word.</summary>
    public SignalWord Word => Kind.Word;

    /// <summary>What it says to wear.</summary>
    public ImmutableArray<UsualGear> Gear => IsForLettingGo ? Kind.Off : Kind.Back;

    /// <summary>What the hazard is called.</summary>
    public string Title(Wordbook book) => book.Say($"hazard.{Kind.Name}");

    /// <summary>What it says.</summary>
    public string Text(Wordbook book) => IsForLettingGo ? book.Say($"caution.off.{Kind.Name}") : book.Say($"caution.back.{Kind.Name}");

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
