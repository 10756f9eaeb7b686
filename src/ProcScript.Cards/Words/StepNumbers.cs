using System.Globalization;

namespace ProcScript.Cards.Words;

/// <summary>Lists of step numbers in words.</summary>
internal static class StepNumbers
{
    /// <summary>Ascending, with runs of three or more drawn together: <c>3, 5–8, 12</c>.</summary>
    public static string InWords(IEnumerable<int> steps)
    {
        List<(int First, int Last)> runs = [];
        foreach (var step in steps.Distinct().Order())
        {
            if (runs.Count > 0 && runs[^1].Last == step - 1)
            {
                runs[^1] = (runs[^1].First, step);
            }
            else
            {
                runs.Add((step, step));
            }
        }

        return string.Join(", ", runs.Select(Run));
    }

    private static string Run((int First, int Last) run) => (run.Last - run.First) switch
    {
        0 => run.First.ToString(CultureInfo.InvariantCulture),
        1 => string.Create(CultureInfo.InvariantCulture, $"{run.First}, {run.Last}"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{run.First}–{run.Last}"),
    };
}
