using System.Globalization;
using ProcScript.Bench.Libraries;

namespace ProcScript.Cli.Tests.Seeded;

/// <summary>
/// A generated library with as many mistakes as procedures, each known by its rule, its file and its line. Most procedures have one. One
/// machine in five has one itself; of its three procedures the first two have mistakes of the text alone, and the third has none.
/// </summary>
internal sealed class SeededLibrary
{
    private const int ProceduresOfAMachine = 3;
    private const int FilesOfAMachine = 1 + ProceduresOfAMachine;
    private const int OneMachineIn = 5;

    private readonly Dictionary<string, string> _clean;

    private SeededLibrary(Dictionary<string, string> clean) => _clean = clean;

    /// <summary>The texts by path.</summary>
    public Dictionary<string, string> Files { get; private init; } = [];

    /// <summary>The mistakes, each with its kind.</summary>
    public List<(Seed Seed, FaultKind Kind)> Seeds { get; } = [];

    /// <summary>A library of so many procedures.</summary>
    public static SeededLibrary Of(int procedures)
    {
        var machines = (procedures + ProceduresOfAMachine - 1) / ProceduresOfAMachine;
        var files = 1 + (machines * FilesOfAMachine) - ((machines * ProceduresOfAMachine) - procedures);
        var clean = LibraryWriter.Write(files).ToDictionary(StringComparer.Ordinal);
        SeededLibrary library = new(clean) { Files = new Dictionary<string, string>(clean, StringComparer.Ordinal) };
        library.Seed(machines);
        return library;
    }

    /// <summary>The text without a mistake.</summary>
    public string CleanText(string path) => _clean[path];

    private void Seed(int machines)
    {
        int text = 0, step = 0, machine = 0;
        for (var number = 1; number <= machines; number++)
        {
            var folder = string.Create(CultureInfo.InvariantCulture, $"machine-{number:D4}");
            var isMachine = number % OneMachineIn == 0 && Files.ContainsKey($"{folder}/procedure-{ProceduresOfAMachine}.proc");
            if (isMachine)
            {
                Make($"{folder}/machine.proc", FaultKinds.InMachine[machine++ % FaultKinds.InMachine.Count], module: 1);
            }

            for (var part = 1; part <= (isMachine ? ProceduresOfAMachine - 1 : ProceduresOfAMachine); part++)
            {
                var path = $"{folder}/procedure-{part}.proc";
                if (Files.ContainsKey(path))
                {
                    // In turn, so that a small library has every kind as well.
                    var inText = isMachine || (text + step) % 3 == 2;
                    Make(path, inText ? FaultKinds.InText[text++ % FaultKinds.InText.Count] : FaultKinds.InSteps[step++ % FaultKinds.InSteps.Count], part);
                }
            }
        }
    }

    private void Make(string path, FaultKind kind, int module)
    {
        (Files[path], var line) = kind.Make(Files[path], module);
        Seeds.Add((new Seed(kind.Code, path, line), kind));
    }
}

/// <summary>What must be found.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="File">The file.</param>
/// <param name="Line">The line, counted from 1.</param>
internal sealed record Seed(string Rule, string File, int Line);
