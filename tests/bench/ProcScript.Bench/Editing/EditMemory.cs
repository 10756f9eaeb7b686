using System.Globalization;

namespace ProcScript.Bench.Editing;

/// <summary>The memory of the server while somebody edits for an hour: as many edits as one a second, of every sort, each taken back.</summary>
internal static class EditMemory
{
    private const int Edits = 3600;
    private const int Quarters = 4;
    private const int EditsToAsk = 4;
    private const int EditsToMachine = 20;

    /// <summary>What is written where: into a text, over a name, in front of a step, in front of a procedure.</summary>
    private static readonly (string Mark, string Old, string Text)[] Sorts =
    [
        ("Crosswise, from", "", "x"),
        ("unplug module_plug_", "unplug ", "// "),
        ("undo module_bolts_", "", "undo nothing_known  "),
        ("stage \"Trim\"", "", "{"),
        ("use \"machine.proc\"", "", "// One line more.\n"),
        ("measure \"flow\"", "", "task \"Look twice.\"\n    "),
        ("work {", "work {", "work"),
        ("procedure job_", "", "procedure one_more \"One more\" on machine_0001 { goal inspect module_1  work { inspect module_1 } }\n"),
    ];

    /// <summary>Prints the head of the table.</summary>
    public static void PrintHead()
    {
        Console.WriteLine($"| library | MB at the start | {string.Join(" | ", Enumerable.Range(1, Quarters).Select(quarter => string.Create(CultureInfo.InvariantCulture, $"after {Edits * quarter / Quarters:N0} edits")))} |");
        Console.WriteLine($"|---|--:|{string.Concat(Enumerable.Repeat("--:|", Quarters))}");
    }

    /// <summary>Edits a document of a library, and its machine now and then, and prints the row.</summary>
    public static void Measure(string library, IReadOnlyList<string> program, string folder, string path)
    {
        using var session = new EditorSession(program, folder);
        var document = EditedDocument.Open(session, path);
        var machine = EditedDocument.Open(session, Path.Combine(Path.GetDirectoryName(path)!, "machine.proc"));
        var places = Array.ConvertAll(Sorts, sort => document.LinesWith(sort.Mark));
        var title = machine.LinesWith("cab heater")[0];
        var megabytes = new List<double> { session.Megabytes };
        for (var edit = 0; edit < Edits; edit += 2)
        {
            if (edit % EditsToMachine == 0)
            {
                There(machine, title, machine.Lines[title].IndexOf("cab", StringComparison.Ordinal), "", "x");
            }
            else
            {
                var sort = edit / 2 % Sorts.Length;
                var line = places[sort][edit * 37 % places[sort].Length];
                There(document, line, document.Lines[line].IndexOf(Sorts[sort].Mark, StringComparison.Ordinal), Sorts[sort].Old, Sorts[sort].Text);
            }

            if ((edit + 2) % (Edits / Quarters) == 0)
            {
                megabytes.Add(session.Megabytes);
            }
        }

        Console.WriteLine($"| {library} | {string.Join(" | ", megabytes.Select(one => one.ToString("F0", CultureInfo.InvariantCulture)))} |");
    }

    /// <summary>There and back, with a look now and then at what the server says.</summary>
    private static void There(EditedDocument document, int line, int column, string old, string text)
    {
        document.Replace(line, column, old, text);
        document.AwaitFindings();
        if (document.Version / 2 % EditsToAsk == 0)
        {
            document.Ask("textDocument/completion", line, column);
            document.Ask("textDocument/hover", line, column);
        }

        document.Replace(line, column, text, old);
        document.AwaitFindings();
    }
}
