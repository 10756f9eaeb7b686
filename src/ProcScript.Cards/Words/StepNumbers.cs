using System.Globalization;

namespace ProcScript.Cards.Words;

/// <summary>Lists of step numbers in words.</summary>
internal static class StepNumbers
{
    /// <summary>Ascending, with runs of three or more drawn together: <c>3, 5–8, 12</c>.</summary>
    public static string InWords(IEnumerable<int> steps) => InWords(steps, step => step.ToString(CultureInfo.InvariantCulture));

    /// <summary>The same, with each number written by <paramref name="write"/>.</summary>
    public static string InWords(IEnumerable<int> steps, Func<int, string> write)
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

        return string.Join(", ", runs.Select(run => Run(run, write)));
    }

    private static string Run((int First, int Last) run, Func<int, string> write) => (run.Last - run.First) switch
    {
        0 => write(run.First),
        1 => $"{write(run.First)}, {write(run.Last)}",
        _ => $"{write(run.First)}–{write(run.Last)}",
    };
}
