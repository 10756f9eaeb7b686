using System.Diagnostics;
using System.Globalization;
using System.Reflection;
using System.Runtime.Loader;

namespace ProcScript.Mutation.Running;

/// <summary>
/// A process of its own with the tests and the changed room in it. It tries one mutant after the other without being started anew; one
/// that never ends takes it down, and another goes on.
/// </summary>
internal static class Worker
{
    /// <summary>Said of a mutant before it is tried: who dies then has said which.</summary>
    public const string Trying = "trying";

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(15);

    /// <summary>
    /// <c>FOLDER baseline UNITS</c> runs every test and says what it reaches. <c>FOLDER try FILE</c> reads lines of a mutant and the tests to try
    /// it by, with their usual times. The names of test classes may follow: those alone. With the environment variable <c>PROCSCRIPT_MUTANT</c> a mutant is there from the first line of code on.
    /// </summary>
    public static int Run(string[] args)
    {
        var folder = args[0];
        AppContext.SetData("APP_CONTEXT_BASE_DIRECTORY", folder);
        AssemblyLoadContext.Default.Resolving += (context, name) => Path.Combine(folder, $"{name.Name}.dll") is var path && File.Exists(path) ? context.LoadFromAssemblyPath(path) : null;
        var said = Console.Out;
        Console.SetOut(TextWriter.Null);
        List<TestMethod> tests =
        [
            // A case in milliseconds says more than anything else.
            .. TestMethod.Of(Load(folder, "ProcScript.Cli.Tests"), name => name == "CaseTests" && IsWanted(name)),
            .. TestMethod.Of(Load(folder, "ProcScript.Analysis.Tests"), IsWanted),
        ];
        var mutant = Load(folder, "ProcScript.Analysis").GetType("ProcScript.Mutating.Mutant")!;
        if (args[1] == "baseline")
        {
            Baseline(tests, mutant, int.Parse(args[2], CultureInfo.InvariantCulture), said);
        }
        else
        {
            Try(tests, mutant.GetField("Current")!, File.ReadAllLines(args[2]), said);
        }

        // Threads that never end do not hold it.
        said.Flush();
        Environment.Exit(0);
        return 0;

        bool IsWanted(string name) => args.Length == 3 || args.Contains(name, StringComparer.Ordinal);
    }

    private static Assembly Load(string folder, string name) => AssemblyLoadContext.Default.LoadFromAssemblyPath(Path.Combine(folder, $"{name}.dll"));

    private static void Baseline(List<TestMethod> tests, Type mutant, int units, TextWriter said)
    {
        var reached = new bool[units];
        mutant.GetField("Reached")!.SetValue(null, reached);
        for (var i = 0; i < tests.Count; i++)
        {
            Array.Clear(reached);
            var start = Stopwatch.GetTimestamp();
            var failure = tests[i].RunAsync().GetAwaiter().GetResult();
            var seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
            var list = string.Join(',', Enumerable.Range(0, units).Where(unit => reached[unit]));
            said.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{i}\t{tests[i].Name.Replace('\t', ' ').Replace('\n', ' ')}\t{seconds:0.0000}\t{failure?.Replace('\t', ' ')}\t{list}"));
            said.Flush();
        }
    }

    private static void Try(List<TestMethod> tests, FieldInfo current, string[] lines, TextWriter said)
    {
        foreach (var line in lines)
        {
            var parts = line.Split('\t');
            var number = int.Parse(parts[0], CultureInfo.InvariantCulture);
            said.WriteLine($"{Trying}\t{number}");
            said.Flush();
            current.SetValue(null, number);
            string? killed = null;
            foreach (var test in parts.Skip(1).Select(part => part.Split(':')))
            {
                var method = tests[int.Parse(test[0], CultureInfo.InvariantCulture)];
                var limit = Patience + (TimeSpan.FromSeconds(double.Parse(test[1], CultureInfo.InvariantCulture)) * 10);
                var run = Task.Run(method.RunAsync);
                if (!run.Wait(limit))
                {
                    said.WriteLine($"killed\t{number}\t{method.Name} takes too long");
                    said.Flush();
                    Environment.Exit(3);
                }

                if (run.Result is { } failure)
                {
                    killed = $"{method.Name}: {failure}".ReplaceLineEndings(" ");
                    break;
                }
            }

            said.WriteLine(killed is null ? $"survived\t{number}\t" : $"killed\t{number}\t{killed}");
            said.Flush();
            if (killed?.Contains(nameof(TypeInitializationException), StringComparison.Ordinal) == true)
            {
                // What a class keeps from its start would stay broken for all that come after: they are tried in a process of their own.
                Environment.Exit(3);
            }
        }
    }
}
