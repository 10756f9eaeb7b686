using System.Collections.Immutable;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Necessity;
using ProcScript.Analysis.Rules;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Checking;

/// <summary>Puts what came of the variants of each procedure together, with what came of its callers, and lets the rules judge it.</summary>
internal static class FamilyCheck
{
    private static readonly ImmutableArray<FamilyRule> Rules = [.. AnalysisRules.All.OfType<FamilyRule>()];

    /// <summary>What the rules have to say, in the order of the procedures.</summary>
    public static IEnumerable<Finding> Judge(
        IReadOnlyList<ProcedureOutcome> outcomes,
        IReadOnlyDictionary<Machine, MachineFacts> factsOf,
        ParallelOptions parallel)
    {
        var families = Families(outcomes, factsOf);
        var findings = new ImmutableArray<Finding>[families.Count];
        Parallel.For(0, findings.Length, parallel, i => findings[i] = [.. Rules.SelectMany(rule => rule.Check(families[i]))]);
        return findings.SelectMany(one => one);
    }

    private static List<ProcedureFamily> Families(IReadOnlyList<ProcedureOutcome> outcomes, IReadOnlyDictionary<Machine, MachineFacts> factsOf)
    {
        // Where a machine has errors, what became of its procedures says nothing.
        var members = outcomes
            .Where(outcome => factsOf.ContainsKey(outcome.Procedure.Machine))
            .Select(outcome => new FamilyMember { Outcome = outcome, Facts = factsOf[outcome.Procedure.Machine] })
            .ToList();
        var callers = new Dictionary<SourceSpan, HashSet<FamilyMember>>();
        foreach (var member in members.Where(member => member.Outcome.IsProven))
        {
            foreach (var line in CalledLines(member.Outcome))
            {
                if (!callers.TryGetValue(line, out var calling))
                {
                    callers.Add(line, calling = new HashSet<FamilyMember>(ReferenceEqualityComparer.Instance));
                }

                calling.Add(member);
            }
        }

        return [.. members.GroupBy(member => member.Outcome.Procedure.Declared).Select(own => Family([.. own], callers))];
    }

    private static ProcedureFamily Family(ImmutableArray<FamilyMember> own, Dictionary<SourceSpan, HashSet<FamilyMember>> callers)
    {
        if (callers.Count == 0)
        {
            return new ProcedureFamily(own, []);
        }

        var calling = own
            .SelectMany(member => member.Outcome.Procedure.Stages)
            .SelectMany(stage => stage.Steps)
            .Select(step => step.Calls.IsEmpty ? step.Source : step.Calls[0])
            .Distinct()
            .SelectMany(line => callers.TryGetValue(line, out var found) ? found : [])
            .Distinct<FamilyMember>(ReferenceEqualityComparer.Instance);
        return new ProcedureFamily(own, [.. calling]);
    }

    /// <summary>The lines of other procedures that a procedure brings in.</summary>
    private static IEnumerable<SourceSpan> CalledLines(ProcedureOutcome outcome) => outcome.Procedure.Stages
        .SelectMany(stage => stage.Steps)
        .Where(step => !step.Calls.IsEmpty)
        .SelectMany(step => step.Calls.Skip(1).Append(step.Source))
        .Distinct();
}
