namespace ProcScript.Analysis.Messages;

/// <summary>
/// The plural forms of counted things, by the cardinal rules of the Unicode CLDR for the languages of packs (common/supplemental/plurals.xml).
/// A test holds them to ICU, number by number.
/// </summary>
public static class PluralRules
{
    /// <summary>The category of a whole number or decimal that is written without needless digits: <c>one</c>, <c>few</c>, <c>many</c> or <c>other</c>.</summary>
    public static string CategoryOf(PackLanguage language, double number)
    {
        var value = Math.Abs(number);
        var whole = Math.Floor(value);
        var isWhole = whole == value;
        return language switch
        {
            PackLanguage.French => whole is 0 or 1 ? "one" : IsMillions() ? "many" : "other",
            PackLanguage.Spanish => value == 1 ? "one" : IsMillions() ? "many" : "other",
            PackLanguage.Polish => !isWhole ? "other" : whole == 1 ? "one" : Polish(whole % 10, whole % 100),
            _ => value == 1 ? "one" : "other",
        };

        bool IsMillions() => isWhole && whole != 0 && whole % 1_000_000 == 0;
    }

    private static string Polish(double lastDigit, double lastTwo) =>
        lastDigit is >= 2 and <= 4 && lastTwo is not (>= 12 and <= 14) ? "few" : "many";
}
