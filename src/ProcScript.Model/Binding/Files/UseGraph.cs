using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Rules.Files;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Binding.Files;

/// <summary>Which file uses which, directly.</summary>
internal sealed class UseGraph
{
    private UseGraph(ImmutableArray<ImmutableArray<UseEdge>> uses, ImmutableArray<bool> broken)
    {
        Uses = uses;
        Broken = broken;
    }

    /// <summary>The resolved <c>use</c> lines of each file, by the file's index.</summary>
    public ImmutableArray<ImmutableArray<UseEdge>> Uses { get; }

    /// <summary>
    /// Whether declarations may be missing from a file: a <c>use</c> line leads nowhere, or a line outside of declarations is not
    /// understood.
    /// </summary>
    public ImmutableArray<bool> Broken { get; }

    /// <summary>Resolves every <c>use</c> line.</summary>
    public static UseGraph Resolve(SourceFiles files, FindingSink sink)
    {
        var uses = ImmutableArray.CreateBuilder<ImmutableArray<UseEdge>>(files.All.Length);
        var broken = ImmutableArray.CreateBuilder<bool>(files.All.Length);
        NearNames? paths = null;
        foreach (var file in files.All)
        {
            var edges = ImmutableArray.CreateBuilder<UseEdge>(file.Tree.Root.Uses.Length);
            var isBroken = file.HasStraySyntaxErrors;
            foreach (var use in file.Tree.Root.Uses)
            {
                if (Target(use) is { } target)
                {
                    edges.Add(new UseEdge(target, use));
                    isBroken |= !target.IsRead;
                }
                else
                {
                    isBroken = true;
                }
            }

            uses.Add(edges.ToImmutable());
            broken.Add(isBroken);

            SourceFile? Target(UseSyntax use)
            {
                if (use.Path.Span.Length == 0)
                {
                    // No path is written, which is a finding already.
                    return null;
                }

                var written = use.Path.Value;
                var place = new SourceSpan(file.Path, use.Path.Span);
                if (LibraryPath.Resolve(file.Path, written) is not { } path)
                {
                    sink.Report(OutsideLibrary.At(written, place));
                    return null;
                }

                if (files.Find(path) is { } target)
                {
                    return target;
                }

                paths ??= new NearNames(files.All.Select(one => one.Path));
                var near = paths.Find(path, sink).Select(one => LibraryPath.Relative(file.Path, one));
                sink.Report(MissingFile.At(written, path, [.. near], place));
                return null;
            }
        }

        var graph = new UseGraph(uses.ToImmutable(), broken.ToImmutable());
        graph.ReportCycles(files, sink);
        return graph;
    }

    /// <summary>Walks depth first, on a stack of its own: a chain of files may be longer than the thread's stack is deep.</summary>
    private void ReportCycles(SourceFiles files, FindingSink sink)
    {
        var seen = new bool[files.All.Length];
        var depth = new int[files.All.Length];
        var path = new List<(SourceFile File, int Next)>();
        foreach (var root in files.All)
        {
            if (seen[root.Index])
            {
                continue;
            }

            Enter(root);
            while (path.Count > 0)
            {
                var (file, next) = path[^1];
                if (next == Uses[file.Index].Length)
                {
                    depth[file.Index] = 0;
                    path.RemoveAt(path.Count - 1);
                    continue;
                }

                path[^1] = (file, next + 1);
                var edge = Uses[file.Index][next];
                if (depth[edge.Target.Index] > 0)
                {
                    var round = path.Skip(depth[edge.Target.Index] - 1)
                        .Select(step => (step.File.Path, Uses[step.File.Index][step.Next - 1].Use.Path.Span));
                    sink.Report(CircularUse.At([.. round.Select(step => new SourceSpan(step.Path, step.Span))]));
                }
                else if (!seen[edge.Target.Index])
                {
                    Enter(edge.Target);
                }
            }
        }

        void Enter(SourceFile file)
        {
            seen[file.Index] = true;
            path.Add((file, 0));
            depth[file.Index] = path.Count;
        }
    }
}

/// <summary>A <c>use</c> line with the file that it leads to.</summary>
/// <param name="Target">The file used.</param>
/// <param name="Use">The line.</param>
internal readonly record struct UseEdge(SourceFile Target, UseSyntax Use);
