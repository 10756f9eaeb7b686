using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using ProcScript.Analysis.Prose;
using ProcScript.Analysis.Rules;
using ProcScript.Analysis.Rules.Workshop.Writing;
using ProcScript.Analysis.Settings;
using ProcScript.Syntax;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Checking;

/// <summary>Lets the rules of wording read every file.</summary>
internal static class ProseCheck
{
    private static readonly ImmutableArray<ProseRule> Rules = [.. AnalysisRules.All.OfType<ProseRule>()];

    /// <summary>What the rules have to say of some trees.</summary>
    public static ImmutableArray<Finding>[] Judge(IReadOnlyList<SyntaxTree> trees, CheckSettings settings, CheckMemory memory, ParallelOptions parallel)
    {
        var findings = new ImmutableArray<Finding>[trees.Count];
        var missing = new List<int>();
        for (var i = 0; i < findings.Length; i++)
        {
            if (memory.Prose.TryGetValue(trees[i], out var known))
            {
                findings[i] = known.Value;
            }
            else
            {
                missing.Add(i);
            }
        }

        if (missing.Count > 0)
        {
            Parallel.For(0, missing.Count, parallel, i => findings[missing[i]] = Judge(trees[missing[i]], settings.For(trees[missing[i]].Text.Path), memory));
        }

        return findings;
    }

    /// <summary>Texts stand in declarations, and each declaration by itself; comments stand anywhere.</summary>
    private static ImmutableArray<Finding> Judge(SyntaxTree tree, PathSettings chosen, CheckMemory memory) => memory.Prose.GetValue(
        tree,
        _ =>
        {
            List<ProseRule> rules = [.. Rules.Where(rule => chosen.SeverityOf(rule.Info) is not null)];
            return new StrongBox<ImmutableArray<Finding>>(
                [.. tree.Root.Declarations.SelectMany(one => Judge(tree, one, rules, chosen, memory)), .. OpenQuestion.Judge(tree, chosen)]);
        }).Value;

    private static ImmutableArray<Finding> Judge(
        SyntaxTree tree, DeclarationSyntax declaration, List<ProseRule> rules, PathSettings chosen, CheckMemory memory) => memory.Prose.GetValue(
        declaration,
        _ =>
        {
            var prose = ProseReader.Read(tree.Text, declaration) with { Settings = chosen };
            return new StrongBox<ImmutableArray<Finding>>([.. rules.SelectMany(rule => rule.Check(prose))]);
        }).Value;
}
