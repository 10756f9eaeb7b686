using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using ProcScript.Mutation.Making;

namespace ProcScript.Mutation.Running;

/// <summary>A run from the code to the report.</summary>
internal static class MutationRun
{
    private const string Room = "ProcScript.Analysis";
    private static readonly string[] TestProjects = ["ProcScript.Analysis.Tests", "ProcScript.Cli.Tests"];

    /// <summary>Below the folder of this program, so that the tests find the checkout above them.</summary>
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "run");

    /// <summary>What the tests do without a mutant, kept for as long as neither they nor the room change.</summary>
    private static readonly string Known = Path.Combine(AppContext.BaseDirectory, "tests.txt");

    /// <summary>Runs; the exit code is 0 where nothing survived, 1 where something did.</summary>
    public static int Run(MutationOptions options)
    {
        Prepare();
        var made = MutatedRoom.Make(Path.Combine(Checkout.Root, "src", Room), [.. options.Folders], Folder);
        Console.WriteLine($"{made.Mutants.Count} mutants in {made.Units} bodies and initialisers of {string.Join(", ", options.Folders)}");

        if (options.IsList)
        {
            made.Mutants.Select(MutationReport.Line).ToList().ForEach(Console.WriteLine);
            return 0;
        }

        var tests = Baseline(made.Units);
        var drawn = Draw(made.Mutants, options);
        Console.WriteLine($"{drawn.Count} of them are tried");

        var results = Try(drawn, tests, options);
        List<string> report = [.. MutationReport.Lines(made.Mutants.Count, drawn, results, options)];
        report.ForEach(Console.WriteLine);
        if (options.Report is { } path)
        {
            File.WriteAllLines(path, report);
        }

        return results.Values.Any(result => result.Outcome == MutantOutcome.Survived) ? 1 : 0;

        List<UsualTest> Baseline(int units)
        {
            var key = string.Join(' ', [Key(), .. options.Tests]);
            var lines = File.Exists(Known) ? File.ReadAllLines(Known) : [];
            if (lines.FirstOrDefault() != key)
            {
                List<string> heard = [key];
                Work(["baseline", units.ToString(CultureInfo.InvariantCulture), .. options.Tests], null, heard.Add);
                File.WriteAllLines(Known, heard);
                lines = [.. heard];
            }

            List<UsualTest> found = [.. lines.Skip(1).Select(UsualTest.Parse)];
            if (found.Count == 0)
            {
                throw new InvalidOperationException("No test was run: see what the worker says.");
            }

            var kept = found.Where(test => test.Failure.Length == 0 && test.Seconds <= options.Longest).ToList();
            Console.WriteLine($"{kept.Count} of {found.Count} tests are tried: {found.Count(test => test.Failure.Length > 0)} fail here without any mutant, {found.Count(test => test.Failure.Length == 0 && test.Seconds > options.Longest)} take over {options.Longest} s");
            foreach (var test in found.Where(test => test.Failure.Length > 0))
            {
                Console.WriteLine($"  {test.Name}: {test.Failure}");
            }

            return kept;
        }
    }

    /// <summary>What the room and the tests were compiled from.</summary>
    private static string Key() => string.Join(' ', TestProjects.Append(Room).Select(name =>
        Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(Path.Combine(Folder, $"{name}.dll"))))[..16]));

    /// <summary>All the tests' programs in one folder of their own.</summary>
    private static void Prepare()
    {
        if (Directory.Exists(Folder))
        {
            Directory.Delete(Folder, recursive: true);
        }

        foreach (var from in TestProjects.Select(project => Path.Combine(Checkout.Root, "tests", project, "bin", "Debug", "net10.0")))
        {
            if (!Directory.Exists(from))
            {
                throw new InvalidOperationException($"Build the solution first: {from} is not there.");
            }

            foreach (var file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
            {
                var to = Path.Combine(Folder, Path.GetRelativePath(from, file));
                Directory.CreateDirectory(Path.GetDirectoryName(to)!);
                File.Copy(file, to, overwrite: true);
            }
        }
    }

    private static List<Mutant> Draw(IReadOnlyList<Mutant> mutants, MutationOptions options)
    {
        if (options.Only.Count > 0)
        {
            return [.. mutants.Where(mutant => options.Only.Contains(mutant.Number))];
        }

        var shuffled = mutants.ToArray();
        new Random(options.Seed).Shuffle(shuffled);
        return [.. (options.Sample == 0 ? shuffled : shuffled.Take(options.Sample)).OrderBy(mutant => mutant.Number)];
    }

    private static Dictionary<int, MutantResult> Try(List<Mutant> mutants, List<UsualTest> tests, MutationOptions options)
    {
        Dictionary<int, MutantResult> results = [];
        Dictionary<int, List<UsualTest>> reaching = [];
        foreach (var mutant in mutants)
        {
            // What is computed once is reached by whoever asks first, and read by all.
            reaching[mutant.Number] = [.. Within(tests.Where(test => mutant.IsInitialiser ? test.Reached.Count > 0 : test.Reached.Contains(mutant.Unit)), options.Each)];
            if (reaching[mutant.Number].Count == 0)
            {
                results[mutant.Number] = new MutantResult(MutantOutcome.NotReached, "");
            }
        }

        // One process for many, each mutant tried in it until a test fails.
        List<Mutant> left = [.. mutants.Where(mutant => !results.ContainsKey(mutant.Number) && !mutant.IsInitialiser)];
        var file = Path.Combine(Folder, "mutants.txt");
        while (left.Count > 0)
        {
            File.WriteAllLines(file, left.Select(mutant => Line(mutant, reaching[mutant.Number])));
            var said = Work(["try", file, .. options.Tests], null, line => Note(line, results, mutants.Count));
            if (!left.Exists(mutant => results.ContainsKey(mutant.Number)) && said is null)
            {
                throw new InvalidOperationException("The worker says nothing.");
            }

            // Who took the process down with it is dead.
            if (said is { } number && !results.ContainsKey(number))
            {
                results[number] = new MutantResult(MutantOutcome.Killed, "the program ends");
            }

            left.RemoveAll(mutant => results.ContainsKey(mutant.Number));
        }

        // What is computed once has to be there from the start, each in a process of its own.
        foreach (var mutant in mutants.Where(mutant => !results.ContainsKey(mutant.Number)))
        {
            File.WriteAllLines(file, [Line(mutant, reaching[mutant.Number])]);
            Work(["try", file, .. options.Tests], mutant.Number, line => Note(line, results, mutants.Count));
            results.TryAdd(mutant.Number, new MutantResult(MutantOutcome.Killed, "the program ends"));
        }

        return results;
    }

    /// <summary>The tests that fit into a time: for half of it the quickest, most of them cases; then the longest, which try the most by one.</summary>
    private static IEnumerable<UsualTest> Within(IEnumerable<UsualTest> tests, double seconds)
    {
        LinkedList<UsualTest> left = new(tests.OrderBy(test => test.Seconds));
        for (var taken = 0.0; left.Count > 0;)
        {
            var next = taken < seconds / 2 ? left.First! : left.Last!;
            left.Remove(next);
            taken += next.Value.Seconds;
            if (taken > seconds)
            {
                yield break;
            }

            yield return next.Value;
        }
    }

    private static string Line(Mutant mutant, IEnumerable<UsualTest> tests) =>
        string.Join('\t', [mutant.Number.ToString(CultureInfo.InvariantCulture), .. tests.Select(test => string.Create(CultureInfo.InvariantCulture, $"{test.Index}:{test.Seconds:0.0000}"))]);

    private static void Note(string line, Dictionary<int, MutantResult> results, int all)
    {
        var parts = line.Split('\t');
        if (parts[0] != Worker.Trying)
        {
            results[int.Parse(parts[1], CultureInfo.InvariantCulture)] = new MutantResult(parts[0] == "killed" ? MutantOutcome.Killed : MutantOutcome.Survived, parts[2]);
            Console.Error.WriteLine($"{results.Count} of {all}: {line}");
        }
    }

    /// <summary>Starts a worker and hears it out.</summary>
    /// <returns>The mutant that it tried last.</returns>
    private static int? Work(string[] arguments, int? mutant, Action<string> hear)
    {
        ProcessStartInfo start = new("dotnet", [Path.Combine(AppContext.BaseDirectory, "ProcScript.Mutation.dll"), "work", Folder + Path.DirectorySeparatorChar, .. arguments])
        {
            RedirectStandardOutput = true,
            WorkingDirectory = Folder,
        };
        // A mutant that fills the memory is to end itself and nobody else.
        start.Environment["DOTNET_GCHeapHardLimit"] = "0xC0000000";
        start.Environment["PROCSCRIPT_MUTANT"] = (mutant ?? 0).ToString(CultureInfo.InvariantCulture);
        using var process = Process.Start(start)!;
        int? last = null;
        while (process.StandardOutput.ReadLine() is { } line)
        {
            if (line.StartsWith(Worker.Trying + "\t", StringComparison.Ordinal))
            {
                last = int.Parse(line.Split('\t')[1], CultureInfo.InvariantCulture);
            }

            if (line.Length > 0)
            {
                hear(line);
            }
        }

        process.WaitForExit();
        return last;
    }
}
