using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;

namespace ProcScript.Model.Binding.Files;

/// <summary>Which file uses which and sees which, with what made it so.</summary>
/// <param name="Graph">The direct uses.</param>
/// <param name="Reach">Which file sees which.</param>
/// <param name="Sink">What is to be said of the <c>use</c> lines.</param>
/// <param name="Files">The files, in order.</param>
internal sealed record SettledGraph(UseGraph Graph, FileReach Reach, FindingSink Sink, ImmutableArray<SourceFile> Files)
{
    private readonly ImmutableArray<(bool IsRead, bool IsStray)> _states = [.. Files.Select(StateOf)];
    private readonly Dictionary<SourceFile, ImmutableArray<string>> _paths = [];

    /// <summary>Resolves the <c>use</c> lines of files.</summary>
    public static SettledGraph Of(SourceFiles files)
    {
        var sink = new FindingSink();
        var graph = UseGraph.Resolve(files, sink);
        return new SettledGraph(graph, FileReach.Of(graph), sink, files.All);
    }

    /// <summary>Whether the same files use each other by the same lines.</summary>
    public bool Holds(SourceFiles files)
    {
        if (Files.Length != files.All.Length)
        {
            return false;
        }

        for (var i = 0; i < Files.Length; i++)
        {
            var file = files.All[i];
            if (!ReferenceEquals(file, Files[i]) || !Holds(file))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Whether one of the files uses others by the same lines.</summary>
    public bool Holds(SourceFile file) => StateOf(file) == _states[file.Index] && (!file.IsChanged || SameUses(file));

    /// <summary>The paths of the files that a file sees, itself among them, in ordinal order.</summary>
    public ImmutableArray<string> PathsFrom(SourceFile file)
    {
        if (!_paths.TryGetValue(file, out var paths))
        {
            _paths.Add(file, paths = [.. Reach.From(file.Index).Select(index => Files[index].Path)]);
        }

        return paths;
    }

    private static bool SameUses(SourceFile file) => file.SettledTree is { } settled
        && settled.Root.Uses.SequenceEqual(file.Tree.Root.Uses);

    private static (bool IsRead, bool IsStray) StateOf(SourceFile file) => (file.IsRead, file.HasStraySyntaxErrors);
}
