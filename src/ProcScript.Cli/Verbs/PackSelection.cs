using System.Collections.Immutable;
using ProcScript.Analysis;
using ProcScript.Model.Procedures;

namespace ProcScript.Cli.Verbs;

/// <summary>Chooses what to build: of each procedure the variant with the options asked for.</summary>
internal static class PackSelection
{
    /// <summary>The procedures to build, in the order of the report.</summary>
    /// <exception cref="UsageException">There is no such procedure, or no machine has such an option.</exception>
    public static ImmutableArray<ProcedureReport> Choose(IReadOnlyCollection<ProcedureReport> reports, string? name, ImmutableArray<string> with)
    {
        var named = reports.Where(report => name is null || report.Procedure.Name == name).ToList();
        if (named.Count == 0)
        {
            throw new UsageException(name is null
                ? "there is no procedure to build."
                : $"there is no procedure '{name}'; there are: {Listed(reports.Select(report => report.Procedure.Name))}.");
        }

        RefuseUnknownOptions(named, with);
        ImmutableArray<ProcedureReport> chosen =
        [
            .. named.GroupBy(report => (report.Procedure.Declared, report.Procedure.Job))
                .Where(variants => IsOnSuchAMachine(variants.First().Procedure, with))
                .Select(variants => Choose([.. variants], with)),
        ];
        return chosen.IsEmpty
            ? throw new UsageException($"there is no such job on a machine with {string.Join(", ", with)}: {Only(named[0].Procedure)}.")
            : chosen;
    }

    /// <summary>Whether a machine with these options has the job at all; without options the job is built for the plainest machine that has it.</summary>
    private static bool IsOnSuchAMachine(Procedure procedure, ImmutableArray<string> with) =>
        !procedure.Machine.Options.Any(option => with.Contains(option.Name))
        || (procedure.OnlyWith.All(option => with.Contains(option.Name)) && !procedure.OnlyWithout.Any(option => with.Contains(option.Name)));

    private static string Only(Procedure procedure) => $"'{procedure.Name}' is only for machines "
        + string.Join(" and ", procedure.OnlyWith.Select(option => $"with {option.Name}").Concat(procedure.OnlyWithout.Select(option => $"without {option.Name}")));

    /// <summary>A check runs a procedure only in the variants that can matter to it: an option that cannot is not looked for.</summary>
    private static ProcedureReport Choose(IReadOnlyCollection<ProcedureReport> variants, ImmutableArray<string> with)
    {
        var matter = variants.SelectMany(variant => variant.Options).ToHashSet(StringComparer.Ordinal);
        matter.IntersectWith(with);
        matter.UnionWith(variants.First().Procedure.OnlyWith.Select(option => option.Name));
        return variants.FirstOrDefault(variant => matter.SetEquals(variant.Options))
            ?? throw new UsageException($"'{variants.First().Procedure.Name}' was not checked with {string.Join(", ", matter)}.");
    }

    private static void RefuseUnknownOptions(List<ProcedureReport> reports, ImmutableArray<string> with)
    {
        var known = reports.SelectMany(report => report.Procedure.Machine.Options).Select(option => option.Name).ToHashSet(StringComparer.Ordinal);
        if (with.FirstOrDefault(option => !known.Contains(option)) is { } unknown)
        {
            throw new UsageException(known.Count == 0
                ? $"there is no option '{unknown}': these machines have no options."
                : $"there is no option '{unknown}'; there are: {Listed(known)}.");
        }
    }

    private static string Listed(IEnumerable<string> names) =>
        string.Join(", ", names.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));
}
