using System.Collections.Immutable;
using ProcScript.Model.Figures;

namespace ProcScript.LanguageServer.Workspaces;

/// <summary>A library that is open in the editor: its files now, and their analysis.</summary>
internal sealed class ServedLibrary
{
    private readonly IServerHost _host;
    private readonly PositionEncoding _encoding;
    private readonly IAnalysisListener _listener;
    private readonly SortedSet<string> _folders = new(StringComparer.Ordinal);
    private readonly Lock _telling = new();
    private AnalysisRun? _run;

    /// <summary>A library with this root; it is empty.</summary>
    public ServedLibrary(string root, IServerHost host, PositionEncoding encoding, IAnalysisListener listener)
    {
        _host = host;
        _encoding = encoding;
        _listener = listener;
        Files = new LibraryFiles
        {
            Root = root,
            Today = host.Today,
            Listed = ImmutableSortedSet.Create<string>(StringComparer.Ordinal),
            Open = ImmutableDictionary.Create<string, OpenDocument>(StringComparer.Ordinal),
            Disk = new DiskReadings(host, root),
            Memory = new LibraryMemory(),
        };
    }

    /// <summary>The files now.</summary>
    public LibraryFiles Files { get; private set; }

    /// <summary>Whether nothing keeps it open.</summary>
    public bool IsIdle => _folders.Count == 0 && Files.Open.IsEmpty;

    /// <summary>Whether a folder of it holds the file at a full path.</summary>
    public bool Holds(string path) => _folders.Any(folder => FolderPaths.Holds(folder, path));

    /// <summary>The path of a file inside the library.</summary>
    public string PathOf(string fullPath) => Files.Root.Length == 0 ? fullPath : FolderPaths.Inside(Files.Root, fullPath);

    /// <summary>Takes a folder in.</summary>
    public void Add(string folder)
    {
        _folders.Add(folder);
        Change(Files.Disk, Files.Open);
    }

    /// <summary>Lets a folder go.</summary>
    public void Remove(string folder)
    {
        _folders.Remove(folder);
        Change(Files.Disk, Files.Open);
    }

    /// <summary>Opens a document or takes its new text.</summary>
    public void Set(string path, OpenDocument document)
    {
        var isNew = !Files.Open.ContainsKey(path);
        var open = Files.Open.SetItem(path, document);
        Change(Files.Disk, open, isNew ? null : Files.Listed);
    }

    /// <summary>Closes a document: what is on the disk counts again.</summary>
    public void Close(string path) => Change(Files.Disk.Without(ImmutableHashSet.Create(path)), Files.Open.Remove(path));

    /// <summary>Takes note of files that came, went or changed on the disk.</summary>
    public void Changed(IReadOnlySet<string> paths)
    {
        // Of JSON only settings matter, of pictures those that a text names; those that are there, or looked for, have been asked about.
        if (paths.Any(path => !(IsJson(path) || FigureFormats.ByName(path) is not null) || Files.Disk.Knows(path)))
        {
            Change(Files.Disk.Without(paths), Files.Open);
        }
    }

    /// <summary>The analysis of the files as they are now.</summary>
    public Task<LibraryAnalysis> AnalyseAsync(CancellationToken cancellation) => Run.WaitAsync(cancellation);

    /// <summary>The analysis of the files as they are now, on its way or done.</summary>
    public AnalysisRun Run => _run ??= Begin();

    private void Change(DiskReadings disk, ImmutableDictionary<string, OpenDocument> open, ImmutableSortedSet<string>? listed = null)
    {
        Files = new LibraryFiles { Root = Files.Root, IsWhole = _folders.Contains(Files.Root), Today = _host.Today, Memory = Files.Memory, Open = open, Disk = disk, Listed = listed ?? List(open) };
        _run?.Replace();
        _run = Begin();
    }

    private ImmutableSortedSet<string> List(ImmutableDictionary<string, OpenDocument> open) =>
        _folders.SelectMany(_host.ListSources).Select(PathOf).Concat(open.Keys.Where(path => !IsJson(path))).ToImmutableSortedSet(StringComparer.Ordinal);

    private static bool IsJson(string path) => path.EndsWith(".json", StringComparison.OrdinalIgnoreCase);

    private AnalysisRun Begin()
    {
        var files = Files;
        return new AnalysisRun((tellBound, cancellation) =>
        {
            try
            {
                var analysis = new LibraryAnalysis(files, files.Bind(cancellation), _encoding);
                tellBound(analysis);
                analysis.Report = files.Check(analysis.Library, cancellation);
                files.Memory.Report = analysis.Report;
                // In one piece: else an older one could be told after a newer one.
                lock (_telling)
                {
                    if (ReferenceEquals(files, Files))
                    {
                        _listener.Analysed(analysis);
                    }
                }

                return analysis;
            }
            catch (Exception fault) when (fault is not OperationCanceledException)
            {
                // Silence would look like success.
                _listener.Failed(fault);
                throw;
            }
        });
    }
}
