using System.Collections.Immutable;
using ProcScript.Analysis.Necessity;
using ProcScript.Analysis.Rules;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Checking;

/// <summary>Puts what came of the variants of each procedure together, with what came of its callers, and lets the rules judge it.</summary>
internal static class FamilyCheck
{
    private static readonly ImmutableArray<FamilyRule> Rules = [.. AnalysisRules.All.OfType<FamilyRule>()];

    /// <summary>What the rules have to say, in the order of the procedures.</summary>
    public static IEnumerable<Finding> Judge(
        IReadOnlyList<ProcedureOutcome> outcomes,
        IReadOnlyDictionary<Machine, JudgedMachine> factsOf,
        FamilyMemory memory,
        ParallelOptions parallel) => memory.Judge(outcomes, factsOf, families => Judge(families, parallel));

    private static ImmutableArray<Finding>[] Judge(IReadOnlyList<ProcedureFamily> families, ParallelOptions parallel)
    {
        var findings = new ImmutableArray<Finding>[families.Count];
        Parallel.For(0, findings.Length, parallel, i => findings[i] = [.. Rules.SelectMany(rule => rule.Check(families[i]))]);
        return findings;
    }
}
