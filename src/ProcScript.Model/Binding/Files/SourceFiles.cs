using System.Collections.Frozen;
using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Rules.Files;
using ProcScript.Model.Sources;
using ProcScript.Syntax;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Binding.Files;

/// <summary>The files of a library, read and parsed.</summary>
internal sealed class SourceFiles
{
    private readonly FrozenDictionary<string, SourceFile> _byPath;

    private SourceFiles(ImmutableArray<SourceFile> all)
    {
        All = all;
        _byPath = all.ToFrozenDictionary(file => file.Path, StringComparer.Ordinal);
    }

    /// <summary>All files in the ordinal order of their paths.</summary>
    public ImmutableArray<SourceFile> All { get; }

    /// <summary>The file at a path, or null.</summary>
    public SourceFile? Find(string path) => _byPath.GetValueOrDefault(path);

    /// <summary>Reads and parses every file of the store, and every file outside its list that one of them uses.</summary>
    public static SourceFiles Load(ISourceStore store, BindingMemory memory, FindingSink sink, CancellationToken cancellation)
    {
        if (memory.Loaded is { } loaded && loaded.Reload(store, memory.Changed, cancellation))
        {
            return loaded.Files;
        }

        memory.Loaded = null;
        var parsed = new SortedDictionary<string, (SyntaxTree Tree, SourceReading Reading)>(StringComparer.Ordinal);
        var missing = new HashSet<string>(StringComparer.Ordinal);
        string[] wave = [.. store.Paths.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
        while (wave.Length > 0)
        {
            foreach (var (path, file) in wave.Zip(ReadAll(store, wave, cancellation)))
            {
                if (file.Reading.Outcome == SourceOutcome.Missing)
                {
                    missing.Add(path);
                }
                else
                {
                    parsed.Add(path, file);
                }
            }

            wave = [.. wave.Where(parsed.ContainsKey)
                .SelectMany(path => FileUses.Of(path, parsed[path].Tree))
                .Where(path => path.Length > 0 && !parsed.ContainsKey(path) && !missing.Contains(path))
                .Distinct(StringComparer.Ordinal)
                .Order(StringComparer.Ordinal)];
        }

        var files = ImmutableArray.CreateBuilder<SourceFile>(parsed.Count);
        foreach (var (path, file) in parsed)
        {
            if (file.Reading.Content is null)
            {
                sink.Report(UnreadableFile.At(new SourceSpan(path, default), file.Reading));
            }

            var known = memory.FileAt(path);
            known.Index = files.Count;
            known.Set(file.Tree, file.Reading.Content is not null);
            known.Texts = (store as TranslatedSourceStore)?.Texts.For(path, file.Tree);
            if (known.IsChanged)
            {
                memory.Changed.Add(known);
            }

            files.Add(known);
        }

        var all = new SourceFiles(files.MoveToImmutable());
        if (memory.IsKept && all.All.All(file => file.IsRead))
        {
            memory.Loaded = new LoadedFiles(store, all, [.. store.Paths], [.. missing]);
        }

        return all;
    }

    private static (SyntaxTree Tree, SourceReading Reading)[] ReadAll(ISourceStore store, string[] paths, CancellationToken cancellation)
    {
        var files = new (SyntaxTree, SourceReading)[paths.Length];
        Parallel.For(0, paths.Length, new ParallelOptions { CancellationToken = cancellation }, index =>
        {
            var reading = store.Read(paths[index]);
            files[index] = (Parse(store, paths[index], reading.Content ?? "", cancellation), reading);
        });
        return files;
    }

    /// <summary>The tree of a text that was read.</summary>
    public static SyntaxTree Parse(ISourceStore store, string path, string content, CancellationToken cancellation) => store is IParsedSourceStore parsed
        ? parsed.Parse(path, content)
        : SyntaxTree.Parse(new SourceText(path, content), cancellation);
}
