using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using ProcScript.Analysis.Bolts;
using ProcScript.Analysis.Rules;
using ProcScript.Model;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Checking;

/// <summary>Lets the rules judge the kinds of the catalog.</summary>
internal static class KindCheck
{
    private static readonly ImmutableArray<KindRule> Rules = [.. AnalysisRules.All.OfType<KindRule>()];

    /// <summary>What the rules have to say, in the order of the kinds.</summary>
    public static IEnumerable<Finding> Judge(Library library, CheckSettings settings, CheckMemory memory) => library.Kinds.SelectMany(one => memory.Kinds.GetValue(
        one,
        kind => new StrongBox<ImmutableArray<Finding>>([.. Rules.SelectMany(rule => rule.Check(kind)), .. TorqueCheck.Judge(Tightening.Of(kind), settings)])).Value);
}
