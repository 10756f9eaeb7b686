using System.Collections.Immutable;

namespace ProcScript.Fuzz.Inputs;

/// <summary>Everything that the repository has written in the language: the cases, each a small library, and the demo library, a machine at a time.</summary>
internal sealed class SeedLibraries
{
    private readonly ImmutableArray<SeedLibrary> _small;
    private readonly ImmutableArray<SeedLibrary> _large;

    private SeedLibraries(ImmutableArray<SeedLibrary> small, ImmutableArray<SeedLibrary> large)
    {
        (_small, _large) = (small, large);
        Lines = [.. All.SelectMany(library => library.Sources.SelectMany(path => library.Files[path].Split('\n'))).Where(line => line.Length > 0).Distinct(StringComparer.Ordinal)];
        Words = [.. Lines.SelectMany(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries)).Distinct(StringComparer.Ordinal)];
    }

    /// <summary>All of them.</summary>
    public IEnumerable<SeedLibrary> All => _small.Concat(_large);

    /// <summary>Every line that stands in any of them, each once.</summary>
    public ImmutableArray<string> Lines { get; }

    /// <summary>Every word, each once.</summary>
    public ImmutableArray<string> Words { get; }

    /// <summary>Any of them, the small ones far more often.</summary>
    public SeedLibrary Any(Random random) => random.Next(60) == 0 ? random.GetItems(_large.AsSpan(), 1)[0] : random.GetItems(_small.AsSpan(), 1)[0];

    /// <summary>Reads them from the repository.</summary>
    /// <param name="root">Its folder.</param>
    public static SeedLibraries In(string root)
    {
        var cases = Path.Combine(root, "tests", "cases");
        var demo = Path.Combine(root, "procedures");
        var folders = Directory.EnumerateFiles(cases, "*.proc", SearchOption.AllDirectories).Select(file => Outermost(file, cases)).Distinct().Order(StringComparer.Ordinal);
        var machines = Directory.EnumerateFiles(demo, "machine.proc", SearchOption.AllDirectories).Order(StringComparer.Ordinal)
            .Select(file => Path.GetFileName(Path.GetDirectoryName(file)!)).ToList();
        var whole = Read(demo);
        return new SeedLibraries(
            [.. folders.Select(folder => new SeedLibrary(Path.GetRelativePath(root, folder), Read(folder)))],
            [
                .. machines.Select(machine => new SeedLibrary(
                    machine,
                    whole.RemoveRange(whole.Keys.Where(path => machines.Exists(other => other != machine && path.StartsWith(other + "/", StringComparison.Ordinal)))))),
            ]);
    }

    /// <summary>The outermost folder below the root that holds sources of its own: the folder of a case.</summary>
    private static string Outermost(string file, string root)
    {
        var outermost = Path.GetDirectoryName(file)!;
        for (var folder = outermost; folder != root; folder = Path.GetDirectoryName(folder)!)
        {
            outermost = Directory.EnumerateFiles(folder, "*.proc").Any() ? folder : outermost;
        }

        return outermost;
    }

    private static ImmutableSortedDictionary<string, string> Read(string folder) => Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
        .Where(file => Path.GetExtension(file) == ".proc" || Path.GetFileName(file) == "procscript.json")
        .ToImmutableSortedDictionary(file => Path.GetRelativePath(folder, file).Replace('\\', '/'), File.ReadAllText, StringComparer.Ordinal);
}
