using System.Collections.Immutable;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Whole;
using ProcScript.Model;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Checking;

/// <summary>
/// Runs the procedures and lets the rules judge them, group by group: see <see cref="CallGroups"/>. The runs take more memory than all
/// else of a library; those that nothing asks for later are let go with their group.
/// </summary>
internal sealed class GroupCheck(
    Library library,
    CheckSettings settings,
    OrderedDictionary<Machine, JudgedMachine> machines,
    CheckMemory memory,
    CheckMemory.Session remembered,
    CheckScope scope,
    ParallelOptions parallel)
{
    /// <summary>What came of the procedures, in their order.</summary>
    public required ProcedureOutcome[] Outcomes { get; init; }

    /// <summary>What they leave behind, in their order, where the rules about libraries speak; otherwise null.</summary>
    public required ProcedureTraces[]? Traces { get; init; }

    /// <summary>Runs and judges all; what the rules have to say of the procedures with their callers.</summary>
    /// <param name="keepsRuns">Whether the outcomes keep their runs.</param>
    public IEnumerable<Finding> Judge(bool keepsRuns)
    {
        // A memory of families is one for the whole library.
        ImmutableArray<ImmutableArray<int>> groups = memory.IsKept ? [[.. Enumerable.Range(0, Outcomes.Length)]] : CallGroups.Of(library.Procedures);
        var findings = new ImmutableArray<Finding>[groups.Length];
        Parallel.For(0, groups.Length, parallel, i => findings[i] = Judge(groups[i], keepsRuns));
        return findings.SelectMany(one => one);
    }

    private ImmutableArray<Finding> Judge(ImmutableArray<int> group, bool keepsRuns)
    {
        Run(group);
        ProcedureOutcome[] outcomes = [.. group.Select(place => Outcomes[place])];
        ImmutableArray<Finding> findings = [.. FamilyCheck.Judge(outcomes, machines, memory.IsKept ? memory.Families : new FamilyMemory(), parallel)];
        if (!keepsRuns)
        {
            foreach (var place in group)
            {
                Outcomes[place] = Outcomes[place].WithoutRuns();
            }
        }

        return findings;
    }

    /// <summary>Runs the procedures at some places, and takes note of what the runs leave behind.</summary>
    public void Run(IReadOnlyList<int> places)
    {
        ProcedureOutcome?[] before = [.. places.Select(place => Outcomes[place])];
        var missing = new List<int>();
        foreach (var place in places)
        {
            if (remembered.Recall(library.Procedures[place]) is { } known)
            {
                Outcomes[place] = known;
            }
            else
            {
                missing.Add(place);
            }
        }

        Parallel.For(0, missing.Count, parallel, i =>
        {
            var procedure = library.Procedures[missing[i]];
            Outcomes[missing[i]] = remembered.Add(procedure, seen => procedure.HasErrors || !scope.Holds(procedure)
                ? ProcedureOutcome.NotRun(procedure, settings)
                : ProcedureCheck.Judge(seen, settings, machines[procedure.Machine].Facts, procedure));
        });
        for (var i = 0; Traces is not null && i < before.Length; i++)
        {
            if (Outcomes[places[i]] is var outcome && !ReferenceEquals(outcome, before[i]))
            {
                Traces[places[i]] = ProcedureTraces.Of(outcome);
            }
        }
    }
}
