using ProcScript.Analysis.Auditing;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Reports;

/// <summary>The words by which programs that read a report know what is in it.</summary>
public static class ReportWords
{
    /// <summary>Such as <c>safe</c>.</summary>
    public static string Of(FixGrade grade) => grade switch
    {
        FixGrade.Safe => "safe",
        FixGrade.NeedsLook => "needs-look",
        _ => "display-only",
    };

    /// <summary>Such as <c>baseline</c>.</summary>
    public static string Of(SilencingKind kind) => kind == SilencingKind.Comment ? "comment" : "baseline";

    /// <summary>Such as <c>used</c>.</summary>
    public static string Of(SuppressionState state) => state switch
    {
        SuppressionState.Used => "used",
        SuppressionState.Unused => "unused",
        SuppressionState.Expired => "expired",
        SuppressionState.UnknownRule => "unknown-rule",
        SuppressionState.RuleOff => "rule-off",
        SuppressionState.NotAsked => "not-asked",
        _ => "not-judged",
    };

    /// <summary>Such as <c>asked-elsewhere</c>.</summary>
    public static string Of(SurvivalReason reason) => reason switch
    {
        SurvivalReason.ItemUntouched => "item-untouched",
        SurvivalReason.NamedUntouched => "named-untouched",
        SurvivalReason.AskedElsewhere => "asked-elsewhere",
        SurvivalReason.NeverAsked => "never-asked",
        SurvivalReason.SameJob => "same-job",
        _ => "pack-only",
    };

    /// <summary>Such as <c>step-left-out</c>.</summary>
    public static string Of(MistakeSort sort) => sort switch
    {
        MistakeSort.StepLeftOut => "step-left-out",
        MistakeSort.OtherPlace => "other-place",
        _ => "fact-left-out",
    };
}
