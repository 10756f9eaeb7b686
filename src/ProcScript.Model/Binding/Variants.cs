using System.Collections.Immutable;
using System.Numerics;
using ProcScript.Model.Machines;

namespace ProcScript.Model.Binding;

/// <summary>The variants of a machine: sets of options that are on, a bit an option.</summary>
internal static class Variants
{
    /// <summary>The most options that are tried in every combination.</summary>
    public const int MostOptions = 8;

    /// <summary>Every combination of these options, the plain variant first; of too many, the plain variant and the one with all.</summary>
    public static ImmutableArray<ulong> Of(ulong options)
    {
        if (BitOperations.PopCount(options) > MostOptions)
        {
            return [0, options];
        }

        var variants = ImmutableArray.CreateBuilder<ulong>(1 << BitOperations.PopCount(options));
        var variant = 0UL;
        do
        {
            variants.Add(variant);
            // Counts through the subsets in ascending order.
            variant = (variant - options) & options;
        }
        while (variant != 0);
        return variants.MoveToImmutable();
    }

    /// <summary>The options among these bits, in the order of declaration.</summary>
    public static IEnumerable<Option> OptionsOf(ulong variant, ImmutableArray<Option> options) =>
        options.Where((_, index) => (variant >> index & 1) != 0);

    /// <summary>Which variants these are, in words; empty where they are all.</summary>
    /// <param name="some">The variants to tell.</param>
    /// <param name="all">All that there are.</param>
    /// <param name="options">The options.</param>
    public static string Describe(IReadOnlyCollection<ulong> some, IReadOnlyCollection<ulong> all, ImmutableArray<Option> options)
    {
        if (some.Count == all.Count)
        {
            return "";
        }

        var seen = all.Aggregate(0UL, (bits, variant) => bits | variant);
        var on = some.Aggregate(seen, (bits, variant) => bits & variant);
        var off = some.Aggregate(seen, (bits, variant) => bits & ~variant);
        var covered = all.Count(variant => (variant & on) == on && (variant & off) == 0);
        if (covered == some.Count)
        {
            return Words(on, off, options);
        }

        var first = some.Min();
        return first == 0 ? "in some variants, the plain one among them" : "in some variants, such as " + Words(first, 0, options);
    }

    private static string Words(ulong on, ulong off, ImmutableArray<Option> options) => string.Join(
        " and ",
        OptionsOf(on, options).Select(option => $"with `{option.Name}`")
            .Concat(OptionsOf(off, options).Select(option => $"without `{option.Name}`")));
}
