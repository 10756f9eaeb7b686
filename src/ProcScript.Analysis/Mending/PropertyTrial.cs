using System.Collections.Immutable;
using ProcScript.Analysis.Checking;
using ProcScript.Model;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Mending;

/// <summary>Writes properties into a library, as far as it stays as sound as it was: texts in, texts out.</summary>
public static class PropertyTrial
{
    /// <summary>
    /// Tries the changes on the library: one that would bring an error or take out a comment is refused. A file that was laid out before is
    /// laid out after.
    /// </summary>
    /// <param name="store">The library.</param>
    /// <param name="settings">What the shop has chosen.</param>
    /// <param name="mayChange">Whether a file may be changed.</param>
    /// <param name="ask">Says what is wanted of the library, once it is checked.</param>
    /// <param name="cancellation">Ends the work with an <see cref="OperationCanceledException"/>.</param>
    public static PropertyReport Run(
        ISourceStore store, CheckSettings settings, Predicate<string> mayChange, Func<LibraryReport, IEnumerable<PropertyChange>> ask, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(store);
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(mayChange);
        ArgumentNullException.ThrowIfNull(ask);
        MendSource source = new(store);
        CheckMemory memory = new();
        var start = State(ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal));
        var refused = ImmutableDictionary.CreateBuilder<PropertyChange, string>();
        var tried = ImmutableArray.CreateBuilder<PropertyChange>();
        foreach (var change in ask(start.Report).Distinct())
        {
            var tree = start.Report.Library.Trees.GetValueOrDefault(change.Owner.Path);
            if ((tree is null ? "its file is not there" : !mayChange(change.Owner.Path) ? "its file is only used by what was named; name it too" : BlockEdits.Obstacle(tree, change)) is { } obstacle)
            {
                refused[change] = obstacle;
            }
            else
            {
                tried.Add(change);
            }
        }

        var (accepted, best) = new Halving<PropertyChange>(
            together => State(Edited(start, together)),
            (next, together) => MendTrial.Objection(start, next, [new MendCandidate([], FixOf(start.Report, [.. together]))]),
            (change, why) => refused[change] = why).Run(start, tried.ToImmutable());
        var end = LibraryMend.LaidOut(start, best, State);
        return new PropertyReport
        {
            Before = start.Report,
            After = end.Report,
            Files = [.. end.Edited.Select(file => new MendedFile(file.Key, source.TextOf(file.Key), file.Value))],
            Fixes = accepted.ToImmutableDictionary(change => change, change => FixOf(start.Report, [change])),
            Refused = refused.ToImmutable(),
        };

        MendState State(ImmutableSortedDictionary<string, string> edited) =>
            new(edited, LibraryCheck.Run(LibraryBinder.Bind(source.With(edited), cancellation), settings, memory, cancellation));
    }

    private static Fix FixOf(LibraryReport report, ImmutableArray<PropertyChange> changes) => new(
        $"Write {string.Join(", ", changes.Select(change => $"`{change.Words}`"))}",
        FixGrade.NeedsLook,
        [.. changes.GroupBy(change => change.Owner.Path, StringComparer.Ordinal).SelectMany(file => BlockEdits.Of(report.Library.Trees[file.Key], file))]);

    private static ImmutableSortedDictionary<string, string> Edited(MendState start, ImmutableArray<PropertyChange> changes) =>
        start.Edited.SetItems(FixOf(start.Report, changes).Edits.GroupBy(edit => edit.Place.Path, StringComparer.Ordinal)
            .Select(file => KeyValuePair.Create(file.Key, TextEdits.Apply(start.TextOf(file.Key), file))));
}

/// <summary>What came of writing properties into a library. Nothing is on a disk yet.</summary>
public sealed record PropertyReport
{
    /// <summary>The library as it was.</summary>
    public required LibraryReport Before { get; init; }

    /// <summary>The library with what could be written.</summary>
    public required LibraryReport After { get; init; }

    /// <summary>The files that come out otherwise, in the order of their paths.</summary>
    public required ImmutableArray<MendedFile> Files { get; init; }

    /// <summary>The changes that were written, each with its edits of the texts as they were.</summary>
    public required ImmutableDictionary<PropertyChange, Fix> Fixes { get; init; }

    /// <summary>The changes that were not, each with the reason, as the rest of a sentence.</summary>
    public required ImmutableDictionary<PropertyChange, string> Refused { get; init; }
}
