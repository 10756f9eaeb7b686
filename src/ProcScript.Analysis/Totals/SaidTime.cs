using System.Globalization;
using System.Text.RegularExpressions;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Totals;

/// <summary>
/// The times that the texts of a step give, as in <c>Evacuate for 30 min.</c> or <c>Wait 10 min.</c>: where no <c>time</c> is given, what is
/// usual would be far too short. Only what follows <c>for</c>, <c>wait</c> or <c>at least</c> counts, so that <c>after 10 min</c> and a limit do not.
/// </summary>
internal static partial class SaidTime
{
    /// <summary>The time of a step of which nobody gives one: what is usual, or more where its texts say so.</summary>
    /// <param name="usual">What is usual, in seconds.</param>
    /// <param name="step">The step.</param>
    public static double With(double usual, PlannedStep step)
    {
        var said = Texts(step).Sum(Seconds);
        return step.Target is Joint or Part ? usual + said : Math.Max(usual, said);
    }

    /// <summary>The seconds that a text gives.</summary>
    internal static double Seconds(string text)
    {
        var seconds = 0.0;
        foreach (Match match in Stretch().Matches(text))
        {
            seconds += double.Parse(match.Groups["value"].ValueSpan, CultureInfo.InvariantCulture) * Units.Find(UnitOf(match.Groups["unit"].ValueSpan))!.Factor;
        }

        return seconds;
    }

    private static string UnitOf(ReadOnlySpan<char> written) => written[0] switch
    {
        's' => "s",
        'm' => "min",
        _ => "h",
    };

    private static IEnumerable<string> Texts(PlannedStep step)
    {
        IEnumerable<string?> texts = step switch
        {
            { Target: Fluid fluid } => [step.Verb == Verb.Fill ? fluid.Fill : fluid.Empty],
            { Target: Joint joint } => [step.Opens ? joint.Release : step.Closes ? joint.Engage : null],
            { Target: null } => [step.Text],
            _ => [],
        };
        return [.. texts.OfType<string>(), .. step.Details.How, .. step.Details.Checks];
    }

    [GeneratedRegex(
        @"\b(for|wait|waits|at least)\s+(about\s+|another\s+|at least\s+)?(?<value>\d+(\.\d+)?)\s*(?<unit>s|seconds?|min|minutes?|h|hours?)\b",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Stretch();
}
