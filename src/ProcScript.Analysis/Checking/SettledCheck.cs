using System.Collections.Immutable;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Whole;
using ProcScript.Model;
using ProcScript.Model.Machines;
using ProcScript.Syntax;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Checking;

/// <summary>A check piece by piece, for the next one to change only the pieces that a step of the library touches.</summary>
internal sealed class SettledCheck
{
    private readonly SortedSet<int> _speaking = [];
    private readonly SortedDictionary<string, ImmutableArray<Finding>> _prose = new(StringComparer.Ordinal);
    private readonly SortedSet<string> _allowing = new(StringComparer.Ordinal);
    private List<(ImmutableArray<string> Files, int First, int End)>? _groups;

    /// <summary>The library.</summary>
    public required Library Library { get; set; }

    /// <summary>The machines without errors, in order, with what is known of them.</summary>
    public required OrderedDictionary<Machine, JudgedMachine> Machines { get; set; }

    /// <summary>What came of the procedures, in their order.</summary>
    public required ProcedureOutcome[] Outcomes { get; init; }

    /// <summary>What the procedures leave behind, in their order, where the rules about libraries speak; otherwise null.</summary>
    public required ProcedureTraces[]? Traces { get; init; }

    /// <summary>What was said of the kinds.</summary>
    public ImmutableArray<Finding> Kinds { get; set; } = [];

    /// <summary>What was said of pictures: their files may change though no text does.</summary>
    public ImmutableArray<Finding> Figures { get; set; } = [];

    /// <summary>What was said of the library as a whole; null where that says nothing.</summary>
    public WholeLibraryCheck? Whole { get; set; }

    /// <summary>What was said of the wording, in the order of the files.</summary>
    public IEnumerable<Finding> Prose => _prose.Values.SelectMany(findings => findings);

    /// <summary>The files with <c>// proc: allow</c> comments, in order.</summary>
    public IReadOnlyCollection<string> Allowing => _allowing;

    /// <summary>Takes note of all that there is.</summary>
    /// <param name="trees">The files that were looked at.</param>
    /// <param name="prose">What was said of the wording of each.</param>
    public void Fill(IReadOnlyList<SyntaxTree> trees, ImmutableArray<Finding>[] prose)
    {
        for (var i = 0; i < Outcomes.Length; i++)
        {
            Note(i);
        }

        foreach (var tree in Library.Trees.Values)
        {
            Note(tree);
        }

        Replace(trees, prose);
    }

    /// <summary>The places of the procedures that are others or see a changed file, in order.</summary>
    public int[] Touched(LibraryChange change)
    {
        var touched = (_groups ??= Groups())
            .Where(group => change.Files.Any(path => group.Files.BinarySearch(path, StringComparer.Ordinal) >= 0))
            .SelectMany(group => Enumerable.Range(group.First, group.End - group.First));
        return [.. touched.Union(change.Procedures).Order()];
    }

    /// <summary>Takes what came of procedures of another library in the place of what was there.</summary>
    public void Replace(Library library, IReadOnlyList<int> places, GroupCheck check)
    {
        foreach (var place in places)
        {
            if (library.Procedures[place].Files != Library.Procedures[place].Files)
            {
                _groups = null;
            }

            Traces?[place] = check.Traces![place];
            Outcomes[place] = check.Outcomes[place];
            Note(place);
        }

        Library = library;
    }

    /// <summary>Takes files in the place of those that had their paths.</summary>
    public void Replace(IReadOnlyList<SyntaxTree> trees, ImmutableArray<Finding>[] prose)
    {
        for (var i = 0; i < prose.Length; i++)
        {
            Note(trees[i]);
            Note(trees[i].Text.Path, prose[i]);
        }
    }

    /// <summary>What was said of machines and procedures, each once.</summary>
    public IEnumerable<Finding> Merged()
    {
        var merge = new FindingMerge();
        IList<KeyValuePair<Machine, JudgedMachine>> machines = Machines;
        merge.Add(
            [.. machines],
            Enumerable.Range(0, machines.Count).Where(place => !machines[place].Value.Findings.IsEmpty),
            run => (run.Key.Declared, run.Key, run.Value.Findings));
        merge.Add(Outcomes, _speaking, outcome => (outcome.Procedure.Declared, outcome.Procedure.Machine, outcome.Findings));
        return merge.Findings();
    }

    /// <summary>The procedures that see the same files: those of one file, and they follow each other.</summary>
    private List<(ImmutableArray<string> Files, int First, int End)> Groups()
    {
        var groups = new List<(ImmutableArray<string> Files, int First, int End)>();
        foreach (var (place, procedure) in Library.Procedures.Index())
        {
            if (groups.Count > 0 && groups[^1] is var (files, first, _) && files == procedure.Files)
            {
                groups[^1] = (files, first, place + 1);
            }
            else
            {
                groups.Add((procedure.Files, place, place + 1));
            }
        }

        return groups;
    }

    private void Note(int place)
    {
        if (Outcomes[place].Findings.IsEmpty)
        {
            _speaking.Remove(place);
        }
        else
        {
            _speaking.Add(place);
        }
    }

    private void Note(SyntaxTree tree)
    {
        if (tree.Suppressions.IsEmpty)
        {
            _allowing.Remove(tree.Text.Path);
        }
        else
        {
            _allowing.Add(tree.Text.Path);
        }
    }

    private void Note(string path, ImmutableArray<Finding> prose)
    {
        if (prose.IsEmpty)
        {
            _prose.Remove(path);
        }
        else
        {
            _prose[path] = prose;
        }
    }
}
