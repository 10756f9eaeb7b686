using ProcScript.Model.Binding;

namespace ProcScript.Model.Machines;

/// <summary>Variants in words.</summary>
public static class VariantWords
{
    /// <summary>Which variants of a machine these are, such as <c>with `air_seat`</c>; empty where they are all.</summary>
    /// <param name="some">The variants to tell.</param>
    /// <param name="all">All that there are.</param>
    public static string Describe(IEnumerable<Machine> some, IReadOnlyCollection<Machine> all) => Variants.Describe(
        some.Select(Bits).ToHashSet(),
        all.Select(Bits).ToHashSet(),
        all.First().Options);

    private static ulong Bits(Machine machine) =>
        machine.With.Aggregate(0UL, (bits, option) => bits | (1UL << machine.Options.IndexOf(option)));
}
