using System.Globalization;
using ProcScript.Analysis.Checking;
using ProcScript.Analysis.Settings;
using ProcScript.Model;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Tests.Editing;

/// <summary>A library that is checked again after every change, with all that an editor remembers of it.</summary>
internal sealed class EditedLibrary
{
    private readonly ParsedFiles _parsed = new();
    private readonly BindingMemory _binding = new();
    private readonly CheckMemory _checks = new();

    /// <summary>A library.</summary>
    /// <param name="files">Its files.</param>
    /// <param name="isWhole">Whether it has settings, so that the rules about a whole library speak.</param>
    public EditedLibrary(IEnumerable<KeyValuePair<string, string>> files, bool isWhole = false)
    {
        Files = new(files.ToDictionary(), StringComparer.Ordinal);
        if (isWhole)
        {
            Files[SettingsKeys.FileName] = "{}";
        }
    }

    /// <summary>The texts by path.</summary>
    public SortedDictionary<string, string> Files { get; }

    /// <summary>The report, with what is remembered.</summary>
    public LibraryReport Check()
    {
        var store = new EditedStore(Sources(), _parsed);
        return LibraryCheck.Run(
            LibraryBinder.Bind(store, _binding, TestContext.Current.CancellationToken), SettingsReader.Read(store), _checks, TestContext.Current.CancellationToken);
    }

    /// <summary>The report of the same texts by somebody who has never seen any.</summary>
    public LibraryReport CheckFresh() => LibraryCheck.Run(Sources(), TestContext.Current.CancellationToken);

    private MemorySourceStore Sources() => new(Files);

    /// <summary>All that a report says, with lines and columns for places.</summary>
    public static string Describe(LibraryReport report)
    {
        return string.Join(
            '\n',
            report.Findings.Select(one => $"{one.Fingerprint} {Told(one)}")
                .Concat(report.Silenced.Select(one => $"silenced {Told(one)}"))
                .Concat(report.Procedures.Select(one =>
                    $"{one.Procedure.Job} {Place(one.Procedure.Declared)} with {string.Join(' ', one.Procedure.Machine.With.Select(option => option.Name))}: {one.IsProven} "
                    + string.Join(' ', one.Outcome.Strip?.Actions.Select(action => $"{action.Verb} {action.Target?.Name}") ?? [])
                    + " | " + string.Join(' ', one.Outcome.Refit?.Actions.Select(action => $"{action.Verb} {action.Target?.Name}") ?? [])
                    + " | " + string.Join(' ', one.Procedure.Stages.SelectMany(stage => stage.Steps).Select(step => Place(step.Source)))
                    + " | " + one.CreatePlan()?.Revision)));

        string Told(ReportedFinding one) => $"{one.Severity} {one.Finding.Rule.Code} {Place(one.Finding.Primary)} {one.Finding.Message} / {one.Finding.Label} / {one.Finding.Help} / "
            + string.Join(' ', one.Finding.Related.Select(related => $"{Place(related.Place)} {related.Label}"))
            + string.Join(' ', one.Finding.Fixes.SelectMany(fix => fix.Edits.Select(edit => $"{fix.Title} {Place(edit.Place)} {edit.NewText}")));

        string Place(SourceSpan place)
        {
            var text = report.Library.Trees.GetValueOrDefault(place.Path)?.Text;
            return text is null ? place.Path : string.Create(CultureInfo.InvariantCulture, $"{place.Path}:{text.PositionAt(place.Span.Start)}-{text.PositionAt(place.Span.End)}");
        }
    }
}
