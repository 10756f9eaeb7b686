using System.Text.RegularExpressions;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Prose;

/// <summary>
/// What an English alert says that happens, as far as its words leave no doubt, against what its signal word means after ANSI Z535
/// (<see cref="SignalWords"/>). Words that may mean a person or a part (<c>cut</c>, <c>crush</c>, <c>burn</c>) count only with a person near.
/// </summary>
internal static partial class AlertMeaning
{
    /// <summary>The signal word of an alert.</summary>
    public static SignalWord WordOf(AlertSyntax alert) => alert.Keyword.Text switch
    {
        "danger" => SignalWord.Danger,
        "warning" => SignalWord.Warning,
        "caution" => SignalWord.Caution,
        _ => SignalWord.Notice,
    };

    /// <summary>The least signal word that what is told asks for, with the words that say so; null where the words leave it open.</summary>
    public static (SignalWord Word, Match Said)? Least(string text)
    {
        if (CertainDeath().Match(text) is { Success: true } certain)
        {
            return (SignalWord.Danger, certain);
        }

        if (SeriousInjury().Match(text) is { Success: true } serious)
        {
            return (SignalWord.Warning, serious);
        }

        return Injury().Match(text) is { Success: true } injury && !NoInjury().IsMatch(text) ? (SignalWord.Caution, injury) : null;
    }

    /// <summary>The words that tell of damage, in a text that has not a word about people; null for any other.</summary>
    public static Match? DamageOnly(string text) => Damage().Match(text) is { Success: true } damage && !AboutPeople().IsMatch(text) ? damage : null;

    /// <summary>The words that say that somebody may be killed, not that he will; null where there are none.</summary>
    public static Match? MayKill(string text) => PossibleDeath().Match(text) is { Success: true } may && !Kills().IsMatch(text) ? may : null;

    [GeneratedRegex(@"\b(will|is sure to|is certain to)\s+(kill|be\s+(fatal|lethal))\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex CertainDeath();

    [GeneratedRegex(
        @"\b(kill(s|ed)?(?=\s*([.,;:!]|$)|\s+(you|people|somebody|someone|anyone|anybody|a\s+person|and|or|if|when)\b)|death|fatal|fatally|lethal|deadly|electrocut\w+|electric\s+shock"
        + @"|seriously\s+injur\w+|serious\s+injur\w+|severe\s+(injur\w+|burns?)|amputat\w+|break(s)?\s+bones|lose\s+(a\s+|your\s+)?(finger|fingers|hand|arm|eye|eyes|life))\b",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex SeriousInjury();

    [GeneratedRegex(
        @"\b(injur(y|ies|e|es|ed)|scalds?\b|frostbite|bruises?|(burns?|cuts?|hurts?|pinch(es)?|crush(es)?|freezes?|irritates?|pierces?|jams?)"
        + @"\s+(and\s+\w+\s+)?(the\s+|your\s+|a\s+|bare\s+)?(skin|hands?|fingers?|eyes?|face|lungs|feet|foot|toes?|arms?|you|people|somebody|someone))\b",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Injury();

    [GeneratedRegex(@"\b(no|nobody|not|never|without)\b[^.;:]*\b(injur|hurt|scald|burn)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex NoInjury();

    [GeneratedRegex(
        @"\b(damages?|damaged|ruins?|ruined|scratch(es|ed)?|cracks?|strips\s+(the\s+)?threads?|swells?|corrodes?|dents?|deforms?|warps?|voids\s+the\s+warranty"
        + @"|loses?\s+(the\s+|its\s+)?(data|settings?|calibration)|wears?\s+out|leaks?)\b",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Damage();

    [GeneratedRegex(
        @"\b(injur\w*|kill\w*|death|fatal\w*|lethal|hurt\w*|burn\w*|scald\w*|cut\w*|sharp|pinch\w*|crush\w*|trap\w*|fall\w*|drop\w*|slip\w*|trip\w*|skin|eyes?|hands?|fingers?|face|heads?|feet|foot|arms?"
        + @"|legs?|body|hair|person\w*|people|somebody|someone|anybody|anyone|everybody|everyone|nobody|technicians?|riders?|drivers?|operators?|you|your|yourself|lives|life|lungs?|breath\w*"
        + @"|inhal\w*|swallow\w*|shock\w*|explo\w+|bursts?|fires?|flames?|ignit\w*|toxic|poison\w*|fumes?|vapou?rs?|gas|gases|steam|hot|heat|acid|lye|springs?|voltage|live|mains|pressure|pressuri[sz]ed"
        + @"|jump\w*|fl(y|ies)|eject\w*|throw\w*|swing\w*|start(s)?\s+by\s+itself|gloves|goggles|glasses|protection|stand\s+clear|keep\s+clear|radiation|laser|noise|hearing|rotat\w*|mov(e|es|ing))\b",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex AboutPeople();

    [GeneratedRegex(@"\b(can|could|may|might)\s+(kill|be\s+(fatal|lethal|deadly))\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex PossibleDeath();

    [GeneratedRegex(@"\bkills\b|\bwill\s+(kill|be\s+(fatal|lethal))\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Kills();
}
