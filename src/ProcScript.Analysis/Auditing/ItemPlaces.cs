using System.Collections.Immutable;
using ProcScript.Model.Names;
using ProcScript.Model;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Auditing;

/// <summary>The places that machines have their items at: <c>left</c> and <c>right</c> of <c>door</c>.</summary>
internal sealed class ItemPlaces
{
    private readonly ILookup<(string Machine, string Name), ImmutableArray<string>> _places;

    private ItemPlaces(ILookup<(string Machine, string Name), ImmutableArray<string>> places) => _places = places;

    /// <summary>Those of all machines of a library, in all their variants.</summary>
    public static ItemPlaces Of(Library library) => new(
        library.Machines
            .SelectMany(machine => machine.Items.Keys.Select(item => (Machine: machine.Name, Item: item)))
            .Where(one => one.Item.EndsWith(']'))
            .Distinct()
            .OrderBy(one => one.Item, StringComparer.Ordinal)
            .ToLookup(
                one => (one.Machine, CanonicalName.Base(one.Item)),
                one => (ImmutableArray<string>)[.. CanonicalName.Indices(one.Item)]));

    /// <summary>Another value of one index at which there is an item of the same name; null where there is none.</summary>
    /// <param name="machine">The machine.</param>
    /// <param name="reference">The name with its indices.</param>
    /// <param name="at">Which index.</param>
    /// <param name="isVariable">Which indices stand for several values.</param>
    public string? Other(string machine, ReferenceSyntax reference, int at, Predicate<string> isVariable) =>
        _places[(machine, reference.Name.Text)]
            .Where(place => place.Length == reference.Indices.Length && Enumerable.Range(0, place.Length).All(i =>
                i == at ? place[i] != reference.Indices[i].Text : isVariable(reference.Indices[i].Text) || place[i] == reference.Indices[i].Text))
            .Select(place => place[at])
            .FirstOrDefault();
}
