using System.Collections.Immutable;
using ProcScript.Analysis.Bolts;
using ProcScript.Analysis.Rules;
using ProcScript.Analysis.Settings;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Checking;

/// <summary>Lets the rules judge how tight things are.</summary>
internal static class TorqueCheck
{
    private static readonly ImmutableArray<TorqueRule> Rules = [.. AnalysisRules.All.OfType<TorqueRule>()];

    /// <summary>What they have to say of such places.</summary>
    public static IEnumerable<Finding> Judge(IEnumerable<Tightening> tightenings, CheckSettings settings) => tightenings
        .Select(tightening => tightening with { Band = Chosen(tightening.Band, settings.For(tightening.Place.Path)) })
        .SelectMany(tightening => Rules.SelectMany(rule => rule.Check(tightening)));

    private static TorqueBand? Chosen(TorqueBand? band, PathSettings settings) => band is null ? null : band with
    {
        StrongShare = settings.Get(SettingsTable.StrongTorque).BaseValue,
        WeakShare = settings.Get(SettingsTable.WeakTorque).BaseValue,
    };
}
