using System.Collections.Immutable;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Checking;

/// <summary>
/// Parts a library's procedures into groups: what a procedure calls, and what calls it, however far, is in its own. A procedure is judged
/// with its callers, so all that matters for it is known when its group has been run. Of two procedures of one file nobody tells whether
/// they call each other; they are in one group.
/// </summary>
internal static class CallGroups
{
    /// <summary>The groups in the order of their first procedures, each the places of its procedures in their order.</summary>
    public static ImmutableArray<ImmutableArray<int>> Of(ImmutableArray<Procedure> procedures)
    {
        var files = new Dictionary<string, Group>(StringComparer.Ordinal);
        foreach (var procedure in procedures)
        {
            foreach (var step in procedure.Stages.SelectMany(stage => stage.Steps).Where(step => !step.Calls.IsEmpty))
            {
                Join(procedure.Declared.Path, step.Source.Path, files);
                foreach (var call in step.Calls)
                {
                    Join(procedure.Declared.Path, call.Path, files);
                }
            }
        }

        var places = new OrderedDictionary<Group, ImmutableArray<int>.Builder>();
        for (var i = 0; i < procedures.Length; i++)
        {
            var group = GroupOf(procedures[i].Declared.Path, files);
            if (!places.TryGetValue(group, out var own))
            {
                places.Add(group, own = ImmutableArray.CreateBuilder<int>());
            }

            own.Add(i);
        }

        return [.. places.Values.Select(own => own.ToImmutable())];
    }

    private static void Join(string path, string other, Dictionary<string, Group> files)
    {
        var (kept, joined) = (GroupOf(path, files), GroupOf(other, files));
        if (kept == joined)
        {
            return;
        }

        (kept, joined) = kept.Files.Count < joined.Files.Count ? (joined, kept) : (kept, joined);
        foreach (var file in joined.Files)
        {
            kept.Files.Add(file);
            files[file] = kept;
        }
    }

    private static Group GroupOf(string path, Dictionary<string, Group> files)
    {
        if (!files.TryGetValue(path, out var group))
        {
            files.Add(path, group = new Group());
            group.Files.Add(path);
        }

        return group;
    }

    private sealed class Group
    {
        public List<string> Files { get; } = [];
    }
}
