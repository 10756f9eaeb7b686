using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Tools;

/// <summary>A line or a bond is opened, and nothing says with what or how.</summary>
public sealed class OpenedWithoutTool : OutcomeRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new(
        "PRC5074",
        "opened-without-tool",
        "A line or a bond is opened, and nothing says with what",
        Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A line is disconnected or a bond is cut, and neither its kind nor the joint nor the action names a tool or says how: no `tool`, no "
            + "`release`, no `how`. Of fasteners another rule speaks, for they always take a tool.",
        Why: "A bond is cut with something, and a union that comes off by hand is the exception. A card that says neither leaves people to pry, "
            + "and the tool list lacks what they will need.",
        Wrong: """
            bond tape "sealing tape"

            machine press "Press" {
              part guard "guard" { held by 1 tape as guard_tape }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                cut guard_tape
                remove guard
              }
            }
            """,
        Right: """
            tool knife "sealant knife"
            bond tape "sealing tape" { tool knife }

            machine press "Press" {
              part guard "guard" { held by 1 tape as guard_tape }
            }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                cut guard_tape
                remove guard
              }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(ProcedureOutcome outcome) =>
        from action in outcome.Strip!.Actions
        where action.Verb is Verb.Disconnect or Verb.Cut
        let joint = (Joint)action.Target!
        where joint is { Release: null, Tools.IsEmpty: true, Kind: { Drive: null, Tools.IsEmpty: true } }
        let details = StepOrigin.Details(action)
        where details is { Tools.IsEmpty: true, How.IsEmpty: true }
        group joint by joint.Kind into opened
        select At(opened.Key, opened.First());

    private static Finding At(Kind kind, Joint joint) =>
        new(
            Id,
            $"{kind.Title} is {(kind.Category == KindCategory.Bond ? "cut" : "disconnected")}, and nothing says with what or how",
            kind.Declared,
            "names no `tool` and has no `release`")
        {
            Related = [new LabeledSpan(joint.Declared, "opened here, for one")],
            Help = "write `tool`, or `release \"…\"` where the bare hand does",
        };
}
