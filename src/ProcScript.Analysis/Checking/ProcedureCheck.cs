using System.Collections.Immutable;
using ProcScript.Analysis.Bolts;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Reading;
using ProcScript.Analysis.Refitting;
using ProcScript.Analysis.Rules;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Stripping;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Checking;

/// <summary>Runs one procedure and lets the rules judge it.</summary>
internal static class ProcedureCheck
{
    private static readonly ImmutableArray<StripRule> StripRules = [.. AnalysisRules.All.OfType<StripRule>()];
    private static readonly ImmutableArray<RefitRunRule> RefitRules = [.. AnalysisRules.All.OfType<RefitRunRule>()];
    private static readonly ImmutableArray<OutcomeRule> OutcomeRules = [.. AnalysisRules.All.OfType<OutcomeRule>()];

    /// <summary>What comes of a procedure whose text and machine are without errors.</summary>
    public static ProcedureOutcome Judge(SeenLibrary library, CheckSettings settings, MachineFacts facts, Procedure procedure)
    {
        var strip = StripRunner.Run(library, facts, procedure);
        List<Finding> findings = [.. StripRules.SelectMany(rule => rule.Check(strip))];
        var attempt = strip.IsSound ? RefitDerivation.Attempt(facts, strip) : null;
        if (attempt is not null)
        {
            findings.AddRange(RefitRules.SelectMany(rule => rule.Check(attempt)));
        }

        var outcome = new ProcedureOutcome
        {
            Procedure = procedure,
            Settings = settings,
            Strip = strip,
            Refit = attempt?.Run,
            IsStripSound = strip.IsSound,
            Findings = [.. findings],
            IsProven = strip.MissedGoals.IsEmpty && attempt is { Failures.IsEmpty: true },
        };
        return outcome.IsProven ? Judge(outcome) : outcome;
    }

    private static ProcedureOutcome Judge(ProcedureOutcome outcome) => new()
    {
        Procedure = outcome.Procedure,
        Settings = outcome.Settings,
        Strip = outcome.Strip,
        Refit = outcome.Refit,
        IsStripSound = outcome.IsStripSound,
        Findings = [.. outcome.Findings, .. OutcomeRules.SelectMany(rule => rule.Check(outcome)), .. TorqueCheck.Judge(Tightening.Of(outcome), outcome.Settings)],
        IsProven = true,
    };
}
