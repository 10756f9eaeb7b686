using System.Collections.Immutable;
using System.Globalization;
using ProcScript.Analysis.Crews;
using ProcScript.Model;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Cli.Crews;

/// <summary>Who of a crew holds a certificate, as said at the command line.</summary>
/// <param name="Certificate">Its name; empty for all of which nothing else is said.</param>
/// <param name="Count">How many, from the first on; 0 where they are named.</param>
/// <param name="People">Those who are named, counted from 0.</param>
internal sealed record CertifiedPeople(string Certificate, int Count, ImmutableArray<int> People)
{
    /// <summary>Reads <c>2</c>, <c>gas=1</c> or <c>gas=A+C</c>; null for anything else.</summary>
    /// <param name="said">What was said.</param>
    /// <param name="most">The most people that a crew has.</param>
    public static CertifiedPeople? Read(string said, int most)
    {
        var parts = said.Split('=');
        var (name, who) = (parts.Length == 2 ? parts[0].Trim() : "", parts[^1].Trim());
        if (parts.Length > 2 || (parts.Length == 2 && name.Length == 0))
        {
            return null;
        }

        if (int.TryParse(who, NumberStyles.None, CultureInfo.InvariantCulture, out var count))
        {
            return count > 0 ? new CertifiedPeople(name, count, []) : null;
        }

        var letters = who.Split('+', StringSplitOptions.TrimEntries);
        return name.Length > 0 && letters.All(letter => letter.Length == 1 && char.ToUpperInvariant(letter[0]) - 'A' is >= 0 and var at && at < most)
            ? new CertifiedPeople(name, 0, [.. letters.Select(letter => char.ToUpperInvariant(letter[0]) - 'A').Distinct().Order()])
            : null;
    }

    /// <summary>The crew of which this is said.</summary>
    public static CrewSize Of(int people, ImmutableArray<CertifiedPeople> said) => new(people, said.LastOrDefault(one => one.Certificate.Length == 0)?.Count ?? int.MaxValue)
    {
        Named = said.Where(one => one.Certificate.Length > 0).GroupBy(one => one.Certificate, StringComparer.Ordinal)
            .ToImmutableDictionary(same => same.Key, same => same.Last() is var last && last.Count > 0 ? [.. Enumerable.Range(0, Math.Min(people, last.Count))] : last.People),
    };

    /// <summary>The names of the certificates in the catalog of a library.</summary>
    public static ImmutableSortedSet<string> Declared(Library library) =>
        library.Trees.Values.SelectMany(tree => tree.Root.Declarations).OfType<CatalogSyntax>()
            .Where(one => one.Keyword.Text == "certificate").Select(one => one.Name.Text).ToImmutableSortedSet(StringComparer.Ordinal);

    /// <summary>Says what is wrong with a crew for a library; nothing where it fits.</summary>
    /// <exception cref="UsageException">A certificate is not declared, or somebody who is named is not there.</exception>
    public static void Check(CrewSize crew, Library library)
    {
        var declared = Declared(library);
        if (crew.Named.Keys.Order(StringComparer.Ordinal).FirstOrDefault(name => !declared.Contains(name)) is { } unknown)
        {
            throw new UsageException($"--certified {unknown}=…: no certificate of that name is declared; {(declared.IsEmpty ? "none is." : $"there are {string.Join(", ", declared)}.")}");
        }

        if (crew.Named.FirstOrDefault(one => one.Value.Any(person => person >= crew.People)) is { Key: { } name } tooMany)
        {
            throw new UsageException($"--certified {name}=…: there are {crew.People} people, from A on, and no {(char)('A' + tooMany.Value.First(person => person >= crew.People))}.");
        }
    }
}
