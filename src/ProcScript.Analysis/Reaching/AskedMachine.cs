using System.Collections.Immutable;
using ProcScript.Analysis.Wording;
using ProcScript.Model;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Machines;
using ProcScript.Model.Names;

namespace ProcScript.Analysis.Reaching;

/// <summary>The machine that a question is about, in one variant, and the items that it names.</summary>
/// <param name="Machine">The machine.</param>
/// <param name="Items">The items, in the order of the question, each once.</param>
public sealed record AskedMachine(Machine Machine, ImmutableArray<MachineItem> Items)
{
    /// <summary>Finds what is meant: the plainest variant of the one machine that has all the items, by their names or by what people call them.</summary>
    /// <param name="library">The library.</param>
    /// <param name="names">The items.</param>
    /// <param name="machine">The machine's name; null where the items say which.</param>
    /// <param name="with">Exactly the options that it has; null for as few as it takes.</param>
    /// <exception cref="ReachRefusedException">Nothing is meant, or more than one thing.</exception>
    public static AskedMachine Find(Library library, ImmutableArray<string> names, string? machine, ImmutableArray<string>? with)
    {
        ArgumentNullException.ThrowIfNull(library);
        var machines = Variants(library, machine, with);
        var having = machines.Select(one => (Machine: one, Items: Named(one, names))).Where(one => one.Items.All(found => found is not null)).ToList();
        if (having.Count == 0)
        {
            throw new ReachRefusedException(NotThere(machines, names));
        }

        var kinds = having.Select(one => one.Machine.Name).Distinct(StringComparer.Ordinal).ToList();
        if (kinds.Count > 1)
        {
            throw new ReachRefusedException(
                $"{ItemPhrases.List(names.Select(name => $"'{name}'"))} is in {ItemPhrases.List(kinds.Select(kind => $"'{kind}'"))}: say which machine with --machine NAME.");
        }

        var (chosen, items) = having.MinBy(one => one.Machine.With.Length);
        return chosen.HasErrors
            ? throw Broken(chosen)
            : new AskedMachine(chosen, [.. items.OfType<MachineItem>().Distinct()]);
    }

    /// <summary>The plainest variant of a machine.</summary>
    /// <param name="library">The library.</param>
    /// <param name="machine">The machine's name; null where there is but one.</param>
    /// <param name="with">Exactly the options that it has; null for as few as there are.</param>
    /// <exception cref="ReachRefusedException">There is none such, or several.</exception>
    internal static Machine Plain(Library library, string? machine, ImmutableArray<string>? with)
    {
        var machines = Variants(library, machine, with);
        var names = machines.Select(one => one.Name).Distinct(StringComparer.Ordinal).ToList();
        var plain = names.Count == 1
            ? machines.MinBy(one => one.With.Length)!
            : throw new ReachRefusedException($"there are several machines: say which of {Listed(names)}.");
        return plain.HasErrors ? throw Broken(plain) : plain;
    }

    private static ReachRefusedException Broken(Machine machine) =>
        new($"the text of the machine '{machine.Name}' has errors, so that nothing can be said of it; 'procscript check' shows them.");

    private static List<Machine> Variants(Library library, string? machine, ImmutableArray<string>? with)
    {
        var named = library.Machines.Where(one => machine is null || one.Name == machine).ToList();
        if (named.Count == 0)
        {
            throw new ReachRefusedException(library.Machines.IsEmpty
                ? "there is no machine in what was read."
                : $"there is no machine '{machine}'; there are: {Listed(library.Machines.Select(one => one.Name))}.");
        }

        if (with is not { } options)
        {
            return named;
        }

        var known = named.SelectMany(one => one.Options).Select(option => option.Name).ToHashSet(StringComparer.Ordinal);
        if (options.FirstOrDefault(option => !known.Contains(option)) is { } unknown)
        {
            throw new ReachRefusedException(known.Count == 0
                ? $"there is no option '{unknown}': the machine has no options."
                : $"there is no option '{unknown}'; there are: {Listed(known)}.");
        }

        var chosen = named.Where(one => options.ToHashSet(StringComparer.Ordinal).SetEquals(one.With.Select(option => option.Name))).ToList();
        return chosen.Count > 0
            ? chosen
            : throw new ReachRefusedException($"no machine was read with exactly {string.Join(", ", options)}: no procedure makes a difference of that.");
    }

    private static ImmutableArray<MachineItem?> Named(Machine machine, ImmutableArray<string> names) => [.. names.Select(name => Item(machine, name))];

    /// <summary>An item by its name, with or without blanks in its index, else by its title where no other has the same.</summary>
    private static MachineItem? Item(Machine machine, string name) =>
        machine.Items.GetValueOrDefault(CanonicalName.Of(CanonicalName.Base(name).Trim(), CanonicalName.Indices(name)))
        ?? (machine.Items.Values.Where(item => item.Title.Equals(name, StringComparison.OrdinalIgnoreCase)).ToList() is [var only] ? only : null);

    private static string NotThere(List<Machine> machines, ImmutableArray<string> names)
    {
        foreach (var name in names)
        {
            if (machines.Exists(machine => Item(machine, name) is not null))
            {
                continue;
            }

            var same = machines.SelectMany(machine => machine.Items.Values).Where(item => item.Title.Equals(name, StringComparison.OrdinalIgnoreCase))
                .Select(item => item.Name).Distinct(StringComparer.Ordinal).ToList();
            if (same.Count > 1)
            {
                return $"'{name}' may be {ItemPhrases.Either(same.Select(one => $"'{CanonicalName.Written(one)}'"))}: say which by its name.";
            }

            var all = machines.SelectMany(machine => machine.Items.Keys).Distinct(StringComparer.Ordinal).ToList();
            if (all.Count == 0)
            {
                return machines is [var empty] ? $"the machine '{empty.Name}' is empty: it has nothing to ask for." : "the machines are empty: they have nothing to ask for.";
            }

            var near = all.Where(one => CanonicalName.Base(one) == name || one.Contains(name, StringComparison.OrdinalIgnoreCase)).Take(MostNear)
                .Concat(new NearNames(all).Find(name)).Distinct(StringComparer.Ordinal).Take(MostNear).Select(CanonicalName.Written).ToList();
            return $"there is no part or joint '{name}' on {(machines.Select(machine => machine.Name).Distinct().ToList() is [var one] ? $"'{one}'" : "any machine")}"
                + (near.Count == 0 ? "." : $"; did you mean {ItemPhrases.Either(near.Select(each => $"'{each}'"))}?");
        }

        return $"no machine has all of {ItemPhrases.List(names.Select(name => $"'{name}'"))} in one variant: ask for each by itself.";
    }

    private const int MostNear = 5;

    private static string Listed(IEnumerable<string> names) => string.Join(", ", names.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal));
}
