using System.Globalization;
using System.Text.RegularExpressions;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Totals;

/// <summary>
/// The times that the texts of a step give, as in <c>Evacuate for 30 min.</c> or <c>Wait 10 minutes.</c>: where no <c>time</c> is given, what is
/// usual would be far too short. Only what follows words such as <c>for</c>, <c>wait</c> or <c>at least</c> counts, so that a limit does not; of a
/// reading also what follows <c>in</c>, <c>over</c> or <c>after</c>, for that is how long it takes. The words of English, German, French, Spanish
/// and Polish are known.
/// </summary>
internal static partial class SaidTime
{
    private const string Lead =
        @"for|waits?|at\s+least|another|für|warten?|abwarten|mindestens|weitere|pendant|durant|attend(?:re|ez)|au\s+moins|durante|esper(?:ar|e)|al\s+menos"
        + "|przez|(?:od|po|za)czeka(?:j|ć)|co\\s+najmniej";

    private const string Amount =
        @"(?<low>\d+(?:[.,]\d+)?|half\s+an|an?|one|two|three|five|ten|fifteen|twenty|thirty)(?:\s*(?:to|-|–|bis|à|a|do)\s*(?<high>\d+(?:[.,]\d+)?))?[\s-]*(?<unit>"
        + @"s(?:ec(?:ond(?:e?s|e)?s?)?|ekunden?|egundos?|ekund[yęa]?)?|min(?:s|utes?|uten?|utos?|ut[yęa]?)?|h(?:rs?|ours?|eures?|oras?)?|std|stunden?|godz(?:in[yęa]?)?)\b";

    /// <summary>
    /// The seconds that a step takes of which nobody gives a time: what is usual, or more where its texts say so. What they say of a wait, a cure
    /// or an alert that counts already is not counted again: of the same wait the longer one holds.
    /// </summary>
    /// <param name="usual">What is usual for the hands, in seconds.</param>
    /// <param name="wait">The wait that the machine gives.</param>
    /// <param name="step">The step.</param>
    public static double With(double usual, double wait, PlannedStep step)
    {
        var said = Math.Max(Texts(step).Distinct().Sum(Seconds) + Reading(step), step.WarnedWait);
        var waits = Math.Max(wait, Math.Max(0, said - (step.Cure?.BaseValue ?? 0)));
        return step.Target is Joint or Part or Energy ? usual + waits : Math.Max(usual, waits);
    }

    /// <summary>The seconds that a text gives.</summary>
    internal static double Seconds(string text) => Sum(Stretch().Matches(text));

    /// <summary>All that the author, the machine and the catalog say of how a step is done.</summary>
    internal static IEnumerable<string> Texts(PlannedStep step)
    {
        IEnumerable<string?> texts = step switch
        {
            { Target: Fluid fluid } => [step.Verb == Verb.Fill ? fluid.Fill : fluid.Empty],
            { Target: Joint joint } => [step.Opens ? joint.Release : step.Closes ? joint.Engage : null],
            { Target: Energy energy, Verb: Verb.Isolate } => [energy.Prepare, energy.Shutdown, energy.Isolate, energy.Lock, energy.Bleed, step.EndsProved ? energy.Verify : null],
            { Target: Energy energy, Verb: Verb.Verify } => [energy.Verify],
            { Target: Energy energy, Verb: Verb.Restore } => [energy.Restore],
            { Target: Part part, Verb: Verb.Aside } => [part.Aside?.How],
            { Target: null } => [step.Text],
            _ => [],
        };
        return [.. texts.OfType<string>(), .. step.Details.How, .. step.Details.Checks];
    }

    /// <summary>How long a reading or a check takes by its own words, as in <c>Vacuum lost in 10 min</c>.</summary>
    private static double Reading(PlannedStep step) =>
        step is { Verb: Verb.Measure or Verb.Check, Text: { } text } ? Sum(Course().Matches(text)) : 0;

    private static double Sum(MatchCollection matches) => matches.Sum(match =>
        Number(match.Groups["high"] is { Success: true } high ? high.Value : match.Groups["low"].Value) * Factor(match.Groups["unit"].Value));

    private static double Number(string written) => written.ToUpperInvariant() switch
    {
        ['H', 'A', 'L', 'F', ..] => 0.5,
        "A" or "AN" or "ONE" => 1,
        "TWO" => 2,
        "THREE" => 3,
        "FIVE" => 5,
        "TEN" => 10,
        "FIFTEEN" => 15,
        "TWENTY" => 20,
        "THIRTY" => 30,
        _ => double.Parse(written.Replace(',', '.'), CultureInfo.InvariantCulture),
    };

    private static double Factor(string unit) => unit.ToUpperInvariant() switch
    {
        ['S', 'T', ..] or ['H', ..] or ['G', ..] => 3600,
        ['S', ..] => 1,
        _ => 60,
    };

    [GeneratedRegex(
        $@"(?:\b(?:{Lead})\s+(?:about\s+|another\s+|at\s+least\s+|etwa\s+|environ\s+|mindestens\s+|au\s+moins\s+|al\s+menos\s+|co\s+najmniej\s+)?{Amount}|(?<!\S){Amount}\s+lang\b)",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Stretch();

    [GeneratedRegex($@"\b(?:in|over|after|nach|über|après|en|tras|po)\s+{Amount}", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Course();
}
