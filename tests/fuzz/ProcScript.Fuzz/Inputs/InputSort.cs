using System.Collections.Immutable;

namespace ProcScript.Fuzz.Inputs;

/// <summary>A way to make an input out of what is written already.</summary>
/// <param name="Name">What it is called on the command line.</param>
internal abstract record InputSort(string Name)
{
    /// <summary>All of them.</summary>
    public static ImmutableArray<InputSort> All { get; } = [new LetterTypo(), new ByteDamage(), new WordDamage(), new LineDamage(), new Splice(), new GrammarText()];

    /// <summary>An input; the same random numbers give the same.</summary>
    public FuzzInput Make(Random random, SeedLibraries seeds)
    {
        var library = seeds.Any(random);
        var path = random.GetItems(library.Sources.AsSpan(), 1)[0];
        return new FuzzInput(library, library.With(path, Change(library.Files[path], random, seeds)), path);
    }

    /// <summary>A text changed.</summary>
    protected abstract string Change(string text, Random random, SeedLibraries seeds);
}
