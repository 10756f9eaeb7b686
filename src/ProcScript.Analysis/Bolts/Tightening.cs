using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Bolts;

/// <summary>A place in the text that says how tight bolts are.</summary>
/// <param name="Name">What it is said of: the kind or the joint.</param>
/// <param name="Kind">The kind of the bolts.</param>
/// <param name="Torque">How tight.</param>
/// <param name="Strength">What is known of their strength.</param>
/// <param name="Place">Where that is written.</param>
internal sealed record Tightening(string Name, Kind Kind, TighteningTorque Torque, BoltStrength Strength, SourceSpan Place)
{
    /// <summary>The torques that make sense, by what the shop has chosen; null where too little is known.</summary>
    public TorqueBand? Band { get; init; } = Strength.Band;

    /// <summary>What a kind says.</summary>
    public static IEnumerable<Tightening> Of(Kind kind)
    {
        if (kind.Torque is { } torque)
        {
            yield return new Tightening(kind.Name, kind, torque, BoltStrength.Of(kind), kind.Declared);
        }
    }

    /// <summary>What the joints of a machine say otherwise than their kinds: a torque, oil or locker of their own.</summary>
    public static IEnumerable<Tightening> Of(Machine machine)
    {
        foreach (var joint in machine.Joints)
        {
            var isItsOwn = joint.TorqueDeclared is not null
                || joint.Oiled != joint.Kind.Oiled
                || joint.ThreadLocker != joint.Kind.ThreadLocker;
            if (isItsOwn && joint.Torque is { } torque)
            {
                yield return new Tightening(joint.Name, joint.Kind, torque, BoltStrength.Of(joint), joint.TorqueDeclared ?? joint.Declared);
            }
        }
    }

    /// <summary>What the actions of a proven procedure say.</summary>
    public static IEnumerable<Tightening> Of(ProcedureOutcome outcome)
    {
        foreach (var action in outcome.Refit?.Actions ?? [])
        {
            if (action.Target is Joint joint && StepOrigin.Details(action) is { Torque: { } torque, TorqueDeclared: { } place })
            {
                yield return new Tightening(joint.Name, joint.Kind, torque, BoltStrength.Of(joint), place);
            }
        }
    }
}
