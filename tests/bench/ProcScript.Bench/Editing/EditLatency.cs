using System.Diagnostics;
using System.Globalization;

namespace ProcScript.Bench.Editing;

/// <summary>What somebody waits for who types: from a change to its findings, to a completion, to a hover, over stdio.</summary>
internal static class EditLatency
{
    private const int Edits = 200;
    private const string Mark = "Crosswise, from";
    private const string Step = "undo module_bolts_";

    /// <summary>Prints the head of the table.</summary>
    public static void PrintHead()
    {
        Console.WriteLine("| library | what | median ms | p99 ms | processor ms an edit | MB |");
        Console.WriteLine("|---|---|--:|--:|--:|--:|");
    }

    /// <summary>Measures with a document of a library and prints the rows.</summary>
    public static void Measure(string library, IReadOnlyList<string> program, string folder, string path)
    {
        using var session = new EditorSession(program, folder);
        var document = EditedDocument.Open(session, path);
        var (marks, steps) = (document.LinesWith(Mark), document.LinesWith(Step));
        var columns = marks.ToDictionary(line => line, line => document.Lines[line].IndexOf(Mark, StringComparison.Ordinal));
        var (findings, completions, hovers) = (new List<double>(), new List<double>(), new List<double>());
        var before = session.ProcessorTime;
        for (var edit = 1; edit <= Edits; edit++)
        {
            var step = steps[edit * 41 % steps.Length];
            var at = document.Lines[step].IndexOf(Step, StringComparison.Ordinal);
            Type();
            findings.Add(Timed(document.AwaitFindings));
            Type();
            completions.Add(Timed(() => document.Ask("textDocument/completion", step, at + "undo ".Length)));
            Type();
            hovers.Add(Timed(() => document.Ask("textDocument/hover", step, at + Step.Length)));
        }

        var processor = (session.ProcessorTime - before).TotalMilliseconds / document.Version;
        Print(library, "change to findings", findings, processor, session.Megabytes);
        Print(library, "change to completion", completions, null, null);
        Print(library, "change to hover", hovers, null, null);

        // Puts a letter in, or another in its place, within a text: the file stays free of errors.
        void Type()
        {
            var version = document.Version + 1;
            var line = marks[version * 37 % marks.Length];
            document.Replace(line, columns[line], version % 2 == 1 ? "" : "?", version % 2 == 1 ? "x" : "y");
        }
    }

    private static double Timed(Action action)
    {
        var clock = Stopwatch.StartNew();
        action();
        return clock.Elapsed.TotalMilliseconds;
    }

    private static void Print(string library, string what, List<double> times, double? processor, double? megabytes)
    {
        times.Sort();
        var (median, late) = (times[times.Count / 2], times[(int)(times.Count * 0.99) - 1]);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {library} | {what} | {median:F1} | {late:F1} | {processor:F1} | {megabytes:F0} |"));
    }
}
