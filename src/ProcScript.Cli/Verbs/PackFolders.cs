using System.Collections.Immutable;
using ProcScript.Model.Procedures;

namespace ProcScript.Cli.Verbs;

/// <summary>Names the folder of each pack: the job, and the options of its machine.</summary>
internal static class PackFolders
{
    /// <summary>A name for each procedure, in their order; the machine stands before the job where two jobs share a name.</summary>
    /// <exception cref="UsageException">Two procedures on machines of one name share their name.</exception>
    public static ImmutableArray<string> Name(IReadOnlyList<Procedure> procedures)
    {
        var jobs = procedures.Select(Job).ToList();
        var shared = Doubles(jobs);
        var names = procedures.Select((procedure, i) => shared.Contains(jobs[i]) ? $"{procedure.Machine.Name}.{jobs[i]}" : jobs[i]).ToImmutableArray();
        if (Doubles(names).Order(StringComparer.Ordinal).FirstOrDefault() is { } clash)
        {
            var files = procedures.Where((_, i) => Same(names[i], clash)).Select(procedure => procedure.Declared.Path);
            throw new UsageException($"{string.Join(" and ", files)} would both be written to '{clash}': build them one by one, or give one another name.");
        }

        return names;
    }

    private static string Job(Procedure procedure) => procedure.Job + string.Concat(procedure.Machine.With.Select(option => "+" + option.Name));

    /// <summary>Names that some file system takes for one.</summary>
    private static HashSet<string> Doubles(IEnumerable<string> names) =>
        names.GroupBy(name => name, StringComparer.OrdinalIgnoreCase).Where(group => group.Count() > 1).Select(group => group.Key).ToHashSet(StringComparer.OrdinalIgnoreCase);

    private static bool Same(string name, string other) => string.Equals(name, other, StringComparison.OrdinalIgnoreCase);
}
