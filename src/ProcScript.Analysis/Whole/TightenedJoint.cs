using System.Globalization;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Whole;

/// <summary>A joint that a procedure tightens.</summary>
/// <param name="Joint">The joint.</param>
/// <param name="Procedure">The procedure.</param>
/// <param name="Torque">How tight.</param>
/// <param name="IsItsOwn">Whether the action says so, and not the joint's kind.</param>
/// <param name="Place">Where that is written; of a kind's torque, where the joint is opened.</param>
internal sealed record TightenedJoint(Joint Joint, Procedure Procedure, TighteningTorque Torque, bool IsItsOwn, SourceSpan Place)
{
    /// <summary>The same for torques that nobody could tell apart with a wrench, whatever their units.</summary>
    public string Key { get; } = string.Join(
        ' ', Torque.Stages.Concat(Torque.Angles).Select(stage => stage.BaseValue.ToString("G2", CultureInfo.InvariantCulture)));

    /// <summary>The joints without a torque of their own that a proven procedure tightens.</summary>
    public static IEnumerable<TightenedJoint> Of(ProcedureOutcome outcome) =>
        from action in outcome.IsProven ? outcome.Refit!.Actions : []
        where action.Verb is Verb.Fasten or Verb.Tighten or Verb.Connect
        let joint = action.Target as Joint
        where joint is { TorqueDeclared: null }
        let details = StepOrigin.Details(action)
        let torque = details.Torque ?? joint.Torque
        where torque is not null
        select new TightenedJoint(
            joint,
            outcome.Procedure,
            torque,
            details.Torque is not null,
            details.TorqueDeclared ?? StepOrigin.Source(action));
}
