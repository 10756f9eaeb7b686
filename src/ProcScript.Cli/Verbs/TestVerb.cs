using System.Collections.Immutable;
using System.Globalization;
using ProcScript.Analysis.Expecting;
using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Verbs;

/// <summary><c>test</c>: holds a library to what its files of expectations say, or writes these anew.</summary>
internal static class TestVerb
{
    /// <summary>Checks the library, judges, and tells or writes.</summary>
    public static async Task<ExitCode> RunAsync(TestRequest request, Surroundings around, CancellationToken stop)
    {
        var expectations = Expectations.Find(request.Input, around);
        var (store, files) = expectations;
        if (files.IsEmpty)
        {
            throw new UsageException(
                $"there is no {ExpectFile.Extension} file in {string.Join(", ", request.Input.Paths.Select(path => $"'{path}'"))}. Write one line, such as 'pack seat_out', into one, and let 'procscript test --update' fill in what it is like now.");
        }

        var report = await expectations.CheckAsync(request.Settings.Read(store, around.Today), stop);
        ExpectCheck check = new(report);
        var failures = files.ToDictionary(file => file.Path, check.Judge, StringComparer.Ordinal);
        var updated = request.Update ? Write(files, failures, store, stop) : [];

        var terminal = Terminal.For(around, request.Colour);
        var paths = new ScreenPaths(store.Selection, around.CurrentFolder);
        var failed = 0;
        foreach (var file in files)
        {
            var lines = file.Problems
                .Concat(failures[file.Path].Where(failure => !request.Update || failure.AsIs is null).Select(failure => (failure.Line, failure.Message)))
                .OrderBy(line => line.Line)
                .ToList();
            failed += lines.Count;
            foreach (var (line, message) in lines)
            {
                terminal.WriteLine(
                    new Piece(string.Create(CultureInfo.InvariantCulture, $"{paths.Of(file.Path)}:{line + 1}: ")),
                    new Piece(PrintableText.Of(message), Ink.Error));
                terminal.WriteLine(new Piece($"    {PrintableText.Of(file.Lines[line].Trim())}"));
            }
        }

        foreach (var path in updated)
        {
            terminal.WriteLine(new Piece($"updated {paths.Of(path)}"));
        }

        var all = files.Sum(file => file.Expectations.Length + file.Sections.Count(section => !file.Of(section).Any()) + file.Problems.Length);
        terminal.WriteLine(new Piece(Summary(all, failed, files.Length)));
        return failed == 0 ? ExitCode.Clean : ExitCode.Findings;
    }

    private static List<string> Write(
        IEnumerable<ExpectFile> files, Dictionary<string, ImmutableArray<ExpectFailure>> failures, DiskSourceStore store, CancellationToken stop)
    {
        List<string> updated = [];
        using PendingFiles pending = new();
        foreach (var file in files)
        {
            if (ExpectUpdate.Apply(file, failures[file.Path]) is var text && text != file.Text)
            {
                pending.Replace(Path.Combine(store.Selection.Root, file.Path), file.Path, file.Text, text);
                updated.Add(file.Path);
            }
        }

        stop.ThrowIfCancellationRequested();
        pending.Commit(replace: true);
        return updated;
    }

    private static string Summary(int all, int failed, int files) =>
        $"{Counted.Of(all, "expectation")} in {Counted.Of(files, "file")}: {(failed == 0 ? "all met" : $"{failed} not met")}";
}

/// <summary>What <c>test</c> is asked to do.</summary>
/// <param name="Input">What to read.</param>
/// <param name="Settings">What the shop has chosen.</param>
/// <param name="Update">Whether to write the expectations anew.</param>
/// <param name="Colour">When to print in colour.</param>
internal sealed record TestRequest(InputRequest Input, SettingsRequest Settings, bool Update, ColourChoice Colour);
