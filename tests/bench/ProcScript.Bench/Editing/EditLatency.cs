using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using ProcScript.Bench.Libraries;
using ProcScript.Bench.Runs;

namespace ProcScript.Bench.Editing;

/// <summary>What somebody waits for who types: from a change to its findings, to a completion, to a hover, over stdio.</summary>
internal static class EditLatency
{
    private const int Edits = 200;
    private const int JobsInTheLongFile = 100;
    private const string Mark = "Crosswise, from";
    private const string Step = "undo module_bolts_";

    /// <summary>Publishes the program, natively unless told otherwise, and prints a table.</summary>
    /// <param name="how">Empty for the native program, <c>jit</c>, or the path of a program that is there already.</param>
    public static void Run(string how)
    {
        var scratch = Directory.CreateTempSubdirectory("procscript-bench-");
        try
        {
            var program = how switch
            {
                "" => Programs.Native(scratch.FullName),
                "jit" => Programs.Jit(scratch.FullName),
                _ => [how],
            };
            Console.WriteLine("| library | what | median ms | p99 ms | processor ms an edit | MB |");
            Console.WriteLine("|---|---|--:|--:|--:|--:|");
            foreach (var files in new[] { 5, 1000 })
            {
                var folder = Path.Combine(scratch.FullName, files.ToString(CultureInfo.InvariantCulture));
                var lines = LibraryWriter.WriteTo(folder, files);
                var path = Path.Combine(folder, "machine-0001", "long.proc");
                var text = LongFile();
                File.WriteAllText(path, text);
                lines += text.Count(letter => letter == '\n');
                Measure(string.Create(CultureInfo.InvariantCulture, $"{lines:N0} lines, of which {text.Count(letter => letter == '\n'):N0} in the file"), program, folder, path, text);
            }
        }
        finally
        {
            scratch.Delete(recursive: true);
        }
    }

    private static string LongFile()
    {
        StringBuilder text = new("use \"machine.proc\"\n");
        for (var job = 0; job < JobsInTheLongFile; job++)
        {
            var one = ProcedureText.Of(1, 1 + (job % 3));
            text.Append(one[(one.IndexOf('\n', StringComparison.Ordinal) + 1)..].Replace("procedure job_", string.Create(CultureInfo.InvariantCulture, $"procedure job_{job}_"), StringComparison.Ordinal));
        }

        return text.ToString();
    }

    private static void Measure(string library, IReadOnlyList<string> program, string folder, string path, string text)
    {
        using var session = new EditorSession(program, folder);
        var uri = new Uri(path).AbsoluteUri;
        session.Tell("textDocument/didOpen", new JsonObject
        {
            ["textDocument"] = new JsonObject { ["uri"] = uri, ["languageId"] = "procscript", ["version"] = 0, ["text"] = text },
        });
        AwaitFindings(session, uri, 0);
        var lines = text.Split('\n');
        int[] marks = [.. Enumerable.Range(0, lines.Length).Where(line => lines[line].Contains(Mark, StringComparison.Ordinal))];
        int[] steps = [.. Enumerable.Range(0, lines.Length).Where(line => lines[line].Contains(Step, StringComparison.Ordinal))];
        var (findings, completions, hovers) = (new List<double>(), new List<double>(), new List<double>());
        var before = session.ProcessorTime;
        var version = 0;
        for (var edit = 1; edit <= Edits; edit++)
        {
            var step = steps[edit * 41 % steps.Length];
            var at = lines[step].IndexOf(Step, StringComparison.Ordinal);
            Type();
            findings.Add(Timed(() => AwaitFindings(session, uri, version)));
            Type();
            completions.Add(Timed(() => session.Ask("textDocument/completion", At(uri, step, at + "undo ".Length))));
            Type();
            hovers.Add(Timed(() => session.Ask("textDocument/hover", At(uri, step, at + Step.Length))));
        }

        var processor = (session.ProcessorTime - before).TotalMilliseconds / version;
        Print(library, "change to findings", findings, processor, session.Megabytes);
        Print(library, "change to completion", completions, null, null);
        Print(library, "change to hover", hovers, null, null);

        void Type()
        {
            var line = marks[++version * 37 % marks.Length];
            Change(session, uri, version, line, lines[line].IndexOf(Mark, StringComparison.Ordinal), version % 2 == 1 ? 0 : 1);
        }
    }

    /// <summary>Puts a letter in, or another in its place, within a text: the file stays free of errors.</summary>
    private static void Change(EditorSession session, string uri, int version, int line, int column, int length)
    {
        JsonObject Position(int character) => new() { ["line"] = line, ["character"] = character };
        session.Tell("textDocument/didChange", new JsonObject
        {
            ["textDocument"] = new JsonObject { ["uri"] = uri, ["version"] = version },
            ["contentChanges"] = new JsonArray(new JsonObject
            {
                ["range"] = new JsonObject { ["start"] = Position(column), ["end"] = Position(column + length) },
                ["text"] = length == 0 ? "x" : "y",
            }),
        });
    }

    private static JsonObject At(string uri, int line, int character) => new()
    {
        ["textDocument"] = new JsonObject { ["uri"] = uri },
        ["position"] = new JsonObject { ["line"] = line, ["character"] = character },
    };

    private static void AwaitFindings(EditorSession session, string uri, int version) => session.Await(message =>
        message["method"]?.GetValue<string>() == "textDocument/publishDiagnostics"
        && message["params"]!["uri"]!.GetValue<string>() == uri
        && message["params"]!["version"]!.GetValue<int>() == version);

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
