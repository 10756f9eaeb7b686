using System.Globalization;
using ProcScript.Mutation.Making;

namespace ProcScript.Mutation.Running;

/// <summary>The table of a run, and who survived.</summary>
internal static class MutationReport
{
    /// <summary>A mutant, by its number and its place.</summary>
    public static string Line(Mutant mutant) => $"{mutant.Number} `{mutant.Path}:{mutant.Line}`: `{mutant.Before}` → `{mutant.After}`";

    /// <summary>The lines, in Markdown.</summary>
    public static IEnumerable<string> Lines(int all, List<Mutant> drawn, Dictionary<int, MutantResult> results, MutationOptions options)
    {
        yield return $"| folder | tried | killed | survived | not reached | killed of all |";
        yield return "|---|---:|---:|---:|---:|---:|";
        foreach (var folder in drawn.GroupBy(mutant => mutant.Folder).OrderBy(group => group.Key, StringComparer.Ordinal))
        {
            yield return Row(folder.Key, [.. folder]);
        }

        yield return Row("all", drawn);
        yield return "";
        yield return $"{drawn.Count} of {all} mutants, seed {options.Seed}.";
        yield return "";
        foreach (var mutant in drawn.Where(mutant => results[mutant.Number].Outcome != MutantOutcome.Killed))
        {
            var what = results[mutant.Number].Outcome == MutantOutcome.Survived ? "survived" : "not reached";
            yield return $"- {what}: {Line(mutant)}";
        }

        string Row(string name, List<Mutant> mutants)
        {
            int Count(MutantOutcome outcome) => mutants.Count(mutant => results[mutant.Number].Outcome == outcome);
            var share = mutants.Count == 0 ? 0 : 100.0 * Count(MutantOutcome.Killed) / mutants.Count;
            return string.Create(CultureInfo.InvariantCulture, $"| {name} | {mutants.Count} | {Count(MutantOutcome.Killed)} | {Count(MutantOutcome.Survived)} | {Count(MutantOutcome.NotReached)} | {share:0.0} % |");
        }
    }
}
