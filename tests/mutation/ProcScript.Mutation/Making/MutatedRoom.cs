using System.Reflection;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Diagnostics;
using Microsoft.CodeAnalysis.Text;

namespace ProcScript.Mutation.Making;

/// <summary>A room, compiled once with all its mutants in it.</summary>
internal sealed class MutatedRoom
{
    private const string Switch =
        """
        namespace ProcScript.Mutating
        {
            internal static class Mutant
            {
                public static int Current = int.TryParse(System.Environment.GetEnvironmentVariable("PROCSCRIPT_MUTANT"), out var number) ? number : 0;
                public static bool[]? Reached;
                public static bool Is(int unit, int number) { if (Reached is { } reached) reached[unit] = true; return Current == number; }
                public static int Among(int unit, int first, int last)
                {
                    if (Reached is { } reached) reached[unit] = true;
                    var current = Current;
                    return current >= first && current <= last ? current : 0;
                }
                public static System.Exception Fell() => new System.InvalidOperationException("A mutant has lost its return.");
            }
        }
        """;

    private static readonly CSharpParseOptions Parsing = new(LanguageVersion.Preview, DocumentationMode.None);

    private MutatedRoom(IReadOnlyList<Mutant> mutants, int units) => (Mutants, Units) = (mutants, units);

    /// <summary>The mutants that can be compiled.</summary>
    public IReadOnlyList<Mutant> Mutants { get; }

    /// <summary>How many units there are; they are counted from 0.</summary>
    public int Units { get; }

    /// <summary>Makes the mutants of some folders of a room and writes its assembly.</summary>
    /// <param name="room">The folder of the room, built.</param>
    /// <param name="folders">Those whose code is changed.</param>
    /// <param name="output">The folder with all that it references, where the assembly is written.</param>
    public static MutatedRoom Make(string room, IReadOnlyCollection<string> folders, string output)
    {
        var name = Path.GetFileName(room);
        var assembly = Path.Combine(output, $"{name}.dll");
        var original = Path.Combine(room, "bin", "Debug", "net10.0", $"{name}.dll");
        var trees = Sources(room).Select(path => CSharpSyntaxTree.ParseText(SourceText.From(File.ReadAllText(path)), Parsing, path)).ToList();
        var compilation = WithGenerated(CSharpCompilation.Create(
            name,
            trees,
            References(output, name),
            new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, optimizationLevel: OptimizationLevel.Release, deterministic: true, nullableContextOptions: NullableContextOptions.Enable, allowUnsafe: true)));
        Fail(compilation.GetDiagnostics(), "The room itself");

        var files = Find(compilation, trees, room, folders, out var units);
        var all = files.SelectMany(file => file.Units).SelectMany(unit => unit.Changes).ToDictionary(change => change.Mutant.Number, change => change.Mutant);
        compilation = compilation.AddSyntaxTrees(CSharpSyntaxTree.ParseText(Switch, Parsing));
        HashSet<int> dropped = [];
        for (var turn = 0; ; turn++)
        {
            var written = files.ToDictionary(file => file, file => file.Write(dropped));
            var changed = compilation;
            foreach (var (file, text) in written)
            {
                var tree = trees.Single(tree => tree.FilePath == Path.Combine(room, file.Path));
                changed = changed.ReplaceSyntaxTree(tree, CSharpSyntaxTree.ParseText(SourceText.From(text.Text), Parsing, tree.FilePath));
            }

            using var stream = File.Create(assembly);
            var result = changed.Emit(stream, manifestResources: Resources(original));
            if (result.Success)
            {
                return new MutatedRoom([.. all.Values.Where(mutant => !dropped.Contains(mutant.Number))], units);
            }

            var before = dropped.Count;
            foreach (var error in result.Diagnostics.Where(diagnostic => diagnostic.Severity == DiagnosticSeverity.Error))
            {
                var text = written.FirstOrDefault(one => Path.Combine(room, one.Key.Path) == error.Location.SourceTree?.FilePath).Value;
                var at = error.Location.SourceSpan;
                var guilty = text.Mutants?.Where(one => one.Span.Contains(at.Start)).Select(one => one.Mutant).ToList() ?? [];
                dropped.UnionWith(guilty.Count > 0 ? guilty : text.Whole?.Where(one => one.Span.IntersectsWith(at)).SelectMany(one => one.Mutants) ?? []);
            }

            if (dropped.Count == before || turn > 20)
            {
                Fail(result.Diagnostics, "The room with its mutants");
            }
        }
    }

    private static List<MutatedFile> Find(CSharpCompilation compilation, IEnumerable<SyntaxTree> trees, string room, IReadOnlyCollection<string> folders, out int units)
    {
        var (number, unitNumber) = (0, 0);
        List<MutatedFile> files = [];
        foreach (var tree in trees)
        {
            var path = Path.GetRelativePath(room, tree.FilePath).Replace('\\', '/');
            if (!folders.Contains(path.Split('/')[0]))
            {
                continue;
            }

            var (model, source) = (compilation.GetSemanticModel(tree), tree.GetText().ToString());
            Changes changes = new(model);
            List<(CodeUnit, int, IReadOnlyList<(Mutant, TextSpan, string)>)> found = [];
            foreach (var unit in CodeUnit.Of(tree.GetRoot(), model))
            {
                var isOnce = unit.Sort == UnitSort.Initialiser && unit.Root.FirstAncestorOrSelf<LambdaExpressionSyntax>() is null;
                var mutants = changes.Of(unit).Distinct().Select(change => (
                    new Mutant(++number, unitNumber, path, tree.GetLineSpan(change.Span).StartLinePosition.Line + 1, OneLine(source.Substring(change.Span.Start, change.Span.Length)), OneLine(change.After), isOnce),
                    change.Span,
                    change.After)).ToList();
                if (mutants.Count > 0)
                {
                    found.Add((unit, unitNumber++, mutants));
                }
            }

            files.Add(new MutatedFile(path, source, found));
        }

        units = unitNumber;
        return files;
    }

    private static string OneLine(string code) => string.Join(' ', code.Split(default(char[]), StringSplitOptions.RemoveEmptyEntries)) is var line && line.Length > 140 ? line[..140] + " …" : line;

    private static IEnumerable<string> Sources(string room) =>
        Directory.EnumerateFiles(room, "*.cs", SearchOption.AllDirectories)
            .Where(path => Path.GetRelativePath(room, path) is var relative && !relative.StartsWith("bin", StringComparison.Ordinal) && !relative.StartsWith("obj", StringComparison.Ordinal))
            .Concat(Directory.EnumerateFiles(Path.Combine(room, "obj", "Debug", "net10.0"), "*.cs"))
            .Order(StringComparer.Ordinal);

    private static IEnumerable<MetadataReference> References(string output, string except) =>
        ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!).Split(Path.PathSeparator).Where(path => path.StartsWith(Path.GetDirectoryName(typeof(object).Assembly.Location)!, StringComparison.Ordinal))
            .Concat(Directory.EnumerateFiles(output, "*.dll").Where(path => Path.GetFileNameWithoutExtension(path) is var name && name != except && IsManaged(path)))
            .DistinctBy(Path.GetFileName)
            .Select(path => MetadataReference.CreateFromFile(path));

    private static bool IsManaged(string path)
    {
        try
        {
            return AssemblyName.GetAssemblyName(path) is not null;
        }
        catch (BadImageFormatException)
        {
            return false;
        }
    }

    /// <summary>With what the framework's own generators write: serialisers, and regular expressions.</summary>
    private static CSharpCompilation WithGenerated(CSharpCompilation compilation)
    {
        var runtime = Path.GetDirectoryName(typeof(object).Assembly.Location)!;
        var packs = Path.Combine(runtime, "..", "..", "..", "packs", "Microsoft.NETCore.App.Ref");
        var folder = Directory.Exists(packs) ? Directory.EnumerateDirectories(packs).Order(StringComparer.Ordinal).Last() : throw new InvalidOperationException($"The SDK's reference pack is not at {packs}.");
        Loader loader = new();
        var generators = Directory.EnumerateFiles(Path.Combine(folder, "analyzers", "dotnet", "cs"), "*.dll")
            .SelectMany(path => new AnalyzerFileReference(path, loader).GetGenerators(LanguageNames.CSharp));
        CSharpGeneratorDriver.Create(generators, parseOptions: Parsing).RunGeneratorsAndUpdateCompilation(compilation, out var generated, out var diagnostics);
        Fail(diagnostics, "What is generated");
        return (CSharpCompilation)generated;
    }

    private static List<ResourceDescription> Resources(string original)
    {
        var assembly = Assembly.Load(File.ReadAllBytes(original));
        return [.. assembly.GetManifestResourceNames().Select(name => new ResourceDescription(name, () => assembly.GetManifestResourceStream(name)!, isPublic: true))];
    }

    private static void Fail(IEnumerable<Diagnostic> diagnostics, string what)
    {
        var errors = diagnostics.Where(diagnostic => diagnostic.Severity == DiagnosticSeverity.Error).Take(10).Select(diagnostic => diagnostic.ToString()).ToList();
        if (errors.Count > 0)
        {
            throw new InvalidOperationException($"{what} cannot be compiled:\n{string.Join("\n", errors)}");
        }
    }

    private sealed class Loader : IAnalyzerAssemblyLoader
    {
        public void AddDependencyLocation(string fullPath)
        {
            // They lie beside each other.
        }

        public Assembly LoadFromPath(string fullPath) => Assembly.LoadFrom(fullPath);
    }
}
