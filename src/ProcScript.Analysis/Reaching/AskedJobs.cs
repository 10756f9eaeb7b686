using System.Collections.Immutable;
using ProcScript.Model;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Reaching;

/// <summary>Finds the jobs that a question is about, all in one variant of one machine.</summary>
internal static class AskedJobs
{
    /// <summary>The procedures, in the order of the question.</summary>
    /// <param name="library">The library.</param>
    /// <param name="names">Their names, with arguments behind hyphens.</param>
    /// <param name="with">Exactly the options that the machine has; null for as few as it takes.</param>
    /// <exception cref="ReachRefusedException">Nothing is meant, or more than one thing.</exception>
    public static ImmutableArray<Procedure> Find(Library library, ImmutableArray<string> names, ImmutableArray<string>? with)
    {
        var found = names.Select(name => Named(library, name)).ToList();
        var machines = found.Select(all => all[0].Machine.Name).Distinct(StringComparer.Ordinal).ToList();
        if (machines.Count > 1)
        {
            throw new ReachRefusedException($"the jobs are on different machines: {string.Join(", ", found.Select(all => $"'{all[0].Job}' on '{all[0].Machine.Name}'"))}.");
        }

        var variants = found[0].Select(procedure => procedure.Machine).Where(machine => found.TrueForAll(all => all.Exists(one => one.Machine == machine))).ToList();
        var wanted = with is { } options
            ? variants.Where(machine => machine.With.Select(option => option.Name).ToHashSet(StringComparer.Ordinal).SetEquals(options)).ToList()
            : [.. variants.OrderBy(machine => machine.With.Length)];
        if (wanted.Count == 0)
        {
            throw new ReachRefusedException(variants.Count == 0
                ? "the jobs have no variant of the machine in common."
                : $"no variant was read with exactly {(with is { IsEmpty: false } asked ? string.Join(", ", asked) : "no option")}; there are: {string.Join("; ", variants.Select(machine => machine.With.IsEmpty ? "no option" : string.Join(", ", machine.With.Select(option => option.Name))))}.");
        }

        var chosen = found.Select(all => all.First(one => one.Machine == wanted[0])).ToImmutableArray();
        return chosen.FirstOrDefault(procedure => procedure.HasErrors || procedure.Machine.HasErrors) is { } broken
            ? throw new ReachRefusedException($"the text of '{broken.Job}' has errors; 'procscript check' shows them.")
            : chosen;
    }

    private static List<Procedure> Named(Library library, string name)
    {
        var all = library.Procedures.Where(procedure => procedure.Job == name).ToList();
        all = all.Count > 0 ? all : [.. library.Procedures.Where(procedure => procedure.Name == name)];
        if (all.Count == 0)
        {
            var jobs = library.Procedures.Select(procedure => procedure.Job).Distinct(StringComparer.Ordinal).ToList();
            var near = new NearNames(jobs).Find(name);
            throw new ReachRefusedException(jobs.Count == 0
                ? "there is no procedure in what was read."
                : $"there is no procedure '{name}'; {(near.IsEmpty ? $"there are: {string.Join(", ", jobs.Order(StringComparer.Ordinal))}" : $"did you mean {string.Join(" or ", near.Select(one => $"'{one}'"))}")}{(near.IsEmpty ? "." : "?")}");
        }

        var distinct = all.Select(procedure => procedure.Job).Distinct(StringComparer.Ordinal).ToList();
        return distinct.Count == 1
            ? all
            : throw new ReachRefusedException($"'{name}' takes arguments: say one of {string.Join(", ", distinct)}.");
    }
}
