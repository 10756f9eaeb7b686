using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using ProcScript.Analysis.Prose;
using ProcScript.Analysis.Rules;
using ProcScript.Model;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Checking;

/// <summary>Lets the rules of wording read every file.</summary>
internal static class ProseCheck
{
    private static readonly ImmutableArray<ProseRule> Rules = [.. AnalysisRules.All.OfType<ProseRule>()];

    /// <summary>What the rules have to say, in the order of the files.</summary>
    public static IEnumerable<Finding> Judge(Library library, CheckSettings settings, CheckMemory memory, CheckScope scope, ParallelOptions parallel)
    {
        var trees = library.Trees.Values.Where(tree => scope.Holds(tree.Text.Path)).ToList();
        var findings = new ImmutableArray<Finding>[trees.Count];
        Parallel.For(0, findings.Length, parallel, i =>
        {
            findings[i] = memory.Prose.GetValue(trees[i], tree =>
            {
                var chosen = settings.For(tree.Text.Path);
                var prose = ProseReader.Read(tree) with { Settings = chosen };
                return new StrongBox<ImmutableArray<Finding>>(
                    [.. Rules.Where(rule => chosen.SeverityOf(rule.Info) is not null).SelectMany(rule => rule.Check(prose))]);
            }).Value;
        });
        return findings.SelectMany(one => one);
    }
}
