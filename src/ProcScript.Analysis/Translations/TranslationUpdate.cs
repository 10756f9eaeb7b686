using System.Collections.Immutable;
using ProcScript.Model;

namespace ProcScript.Analysis.Translations;

/// <summary>What a library's translations come to with what a translator gives back.</summary>
/// <param name="Units">All that is kept then, in the order of the files and texts.</param>
/// <param name="Taken">How many are new or other than before.</param>
/// <param name="LeftOut">What was not taken in, and why.</param>
public sealed record TranslationUpdate(ImmutableArray<TranslationUnit> Units, int Taken, ImmutableArray<(TranslationUnit Unit, string Why)> LeftOut)
{
    /// <summary>Takes translations in: those of texts that are there and still read as they were translated.</summary>
    public static TranslationUpdate Of(Library library, LibraryTranslation kept, XliffFile given)
    {
        ArgumentNullException.ThrowIfNull(library);
        ArgumentNullException.ThrowIfNull(kept);
        ArgumentNullException.ThrowIfNull(given);
        var byPlace = given.Units.Where(unit => unit.Target.Length > 0).GroupBy(unit => (unit.Path, unit.Key)).ToDictionary(same => same.Key, same => same.First());
        var units = ImmutableArray.CreateBuilder<TranslationUnit>();
        var leftOut = ImmutableArray.CreateBuilder<(TranslationUnit, string)>();
        var taken = 0;
        foreach (var unit in kept.Units(library))
        {
            var target = unit.Target;
            if (byPlace.Remove((unit.Path, unit.Key), out var one))
            {
                if (one.Source != unit.Source)
                {
                    leftOut.Add((one, "the text has changed since it was written out"));
                }
                else
                {
                    taken += one.Target == target ? 0 : 1;
                    target = one.Target;
                }
            }

            if (target.Length > 0)
            {
                units.Add(unit with { Target = target });
            }
        }

        leftOut.AddRange(byPlace.Values.Select(unit => (unit, "no text stands there any more")));
        return new TranslationUpdate(units.ToImmutable(), taken, leftOut.ToImmutable());
    }
}
