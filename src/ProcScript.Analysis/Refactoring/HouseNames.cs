using System.Collections.Immutable;
using ProcScript.Analysis.Mending;
using ProcScript.Analysis.Naming;
using ProcScript.Analysis.Rules.WholeLibrary;
using ProcScript.Model.Sources;
using ProcScript.Syntax;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Refactoring;

/// <summary>Renames all that is not called as the shop calls such things, in every file at once.</summary>
/// <param name="report">What a check of the library came to.</param>
/// <param name="cancellation">Ends the work.</param>
internal sealed class HouseNames(LibraryReport report, CancellationToken cancellation)
{
    /// <summary>
    /// The refactoring, at a name that is not as the shop's; null at any other place, where only one can be renamed (the fix of its finding
    /// does that), and where the library would be judged otherwise after it.
    /// </summary>
    public Refactoring? At(SyntaxTree tree, TextSpan place)
    {
        ShopNaming naming = new(report.Library, report.Settings.Everywhere);
        if (!naming.IsChosen || !report.Library.IsWhole)
        {
            return null;
        }

        ImmutableArray<Misnomer> misnomers = [.. naming.Misnomers()];
        if (!misnomers.Any(one => one.Place.Path == tree.Text.Path && one.Place.Span.Start <= place.End && one.Place.Span.End >= place.Start))
        {
            return null;
        }

        var edits = ImmutableArray.CreateBuilder<TextEdit>();
        var (taken, renamed) = (new HashSet<(string Owner, string Name)>(), 0);
        foreach (var misnomer in misnomers)
        {
            cancellation.ThrowIfCancellationRequested();
            // Two names may come to the same one.
            if (naming.Rename(misnomer) is { } uses && taken.Add((misnomer.Thing.Owner, misnomer.Wanted)))
            {
                edits.AddRange(uses);
                renamed++;
            }
        }

        ImmutableArray<TextEdit> all = [.. edits.OrderBy(edit => edit.Place.Path, StringComparer.Ordinal).ThenBy(edit => edit.Place.Span.Start)];
        return renamed > 1 && Keeps(all)
            ? new Refactoring($"Rename {renamed} things as the shop names them, in all files", RefactoringSort.Rewrite, all)
            : null;
    }

    /// <summary>Whether the library is judged as before, but for the names themselves.</summary>
    private bool Keeps(ImmutableArray<TextEdit> edits)
    {
        var after = edits.GroupBy(edit => edit.Place.Path).ToImmutableSortedDictionary(
            file => file.Key, file => TextEdits.Apply(report.Library.Trees[file.Key].Text.Content, file.OrderBy(edit => edit.Place.Span.Start)), StringComparer.Ordinal);
        MendSource source = new(new MemorySourceStore(report.Library.Trees.Select(file => KeyValuePair.Create(file.Key, file.Value.Text.Content))));
        return Codes(source, ImmutableSortedDictionary<string, string>.Empty).SequenceEqual(Codes(source, after));
    }

    private List<string> Codes(MendSource source, ImmutableSortedDictionary<string, string> texts) =>
    [
        .. LibraryCheck.Judge(source.With(texts), report.Settings, cancellation).Findings
            .Select(reported => reported.Finding.Rule.Code).Where(code => code != NameNotAsHouse.Id.Code).Order(StringComparer.Ordinal),
    ];
}
