using System.Collections.Immutable;
using ProcScript.Analysis;
using ProcScript.Analysis.Settings;
using ProcScript.Cli.Sources;
using ProcScript.Cli.Tests.Cases;
using ProcScript.Model.Figures;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;

namespace ProcScript.Cli.Tests.Rules;

/// <summary>Sources that fixes are tried on.</summary>
/// <param name="Files">The texts by path.</param>
/// <param name="Store">What a check reads: the disk for a case as it stands, since some findings are about its files.</param>
internal sealed record Library(ImmutableSortedDictionary<string, string> Files, ISourceStore Store)
{
    public static Library Of(Case found) => new(
        found.Files.ToImmutableSortedDictionary(path => path, path => File.ReadAllText(Path.Combine(found.Folder, path)), StringComparer.Ordinal),
        new DiskSourceStore(new SourceSelection(found.Folder, [.. found.Sources], StandardInput: null) { IsWhole = true }, () => Stream.Null));

    /// <summary>What its own settings choose, on a fixed day.</summary>
    public CheckSettings Settings => SettingsReader.Read(Store) with { Today = StoppedClock.Day };

    /// <summary>Whether a program may apply a fix; the others are only shown.</summary>
    public static bool IsApplied(Fix fix) => fix.Grade != FixGrade.DisplayOnly;

    public IEnumerable<Finding> Check() => LibraryCheck.Run(Store, Settings).Findings.Select(reported => reported.Finding);

    /// <summary>The sources after a fix, whose edits must lie in them and apart.</summary>
    public Library With(Fix fix)
    {
        var files = Files;
        foreach (var file in fix.Edits.GroupBy(edit => edit.Place.Path, StringComparer.Ordinal))
        {
            var text = files[file.Key];
            var after = text.Length;
            foreach (var edit in file.OrderByDescending(edit => edit.Place.Span.Start))
            {
                Assert.InRange(edit.Place.Span.End, edit.Place.Span.Start, after);
                after = edit.Place.Span.Start;
                text = text[..edit.Place.Span.Start] + edit.NewText + text[edit.Place.Span.End..];
            }

            files = files.SetItem(file.Key, text);
        }

        return With(files);
    }

    /// <summary>The library with other texts; whatever else it has, its pictures among them, stays.</summary>
    public Library With(ImmutableSortedDictionary<string, string> files) => new(files, new EditedCase(files, Store));

    private sealed class EditedCase(ImmutableSortedDictionary<string, string> files, ISourceStore store) : ISourceStore
    {
        public IReadOnlyList<string> Paths => store.Paths;

        public bool IsWhole => store.IsWhole;

        public SourceReading Read(string path) => files.TryGetValue(path, out var text) ? new SourceReading(text, SourceOutcome.Read) : store.Read(path);

        public FigureFile FindFigure(string path) => store.FindFigure(path);
    }
}
