using ProcScript.Analysis.Tools;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Plans.Steps;

/// <summary>What an author's block says of the inverse of its action.</summary>
internal static class RefitDetails
{
    /// <summary>
    /// The block's own <c>refit</c> block. Tools (but for those that only take off or measure), people, certificates, the place, hoist, lift, protective equipment and tightening that only the action names hold for both
    /// directions, for the place and the part are the same; prose, photos, pictures, checks, supplies and times do not. Alerts are told
    /// apart elsewhere.
    /// </summary>
    public static ActionDetails Of(ActionDetails action)
    {
        if (ReferenceEquals(action, ActionDetails.None))
        {
            // Most steps have no block, and this is asked of each of them several times.
            return action;
        }

        var refit = action.Refit ?? ActionDetails.None;
        return refit with
        {
            Tools = refit.Tools.IsEmpty ? [.. action.Tools.Where(tool => !TakingOff.Is(tool) && !Measuring.Is(tool))] : refit.Tools,
            People = refit.People == 0 ? action.People : refit.People,
            Certificates = [.. refit.Certificates.Union(action.Certificates)],
            In = refit.In ?? action.In,
            Ppe = refit.Ppe.IsEmpty ? action.Ppe : refit.Ppe,
            Torque = refit.Torque ?? action.Torque,
            TorqueDeclared = refit.TorqueDeclared ?? action.TorqueDeclared,
            Pattern = refit.Pattern ?? action.Pattern,
            Hoist = refit.Hoist || action.Hoist,
            Lift = refit.Lift == LiftGeometry.None ? action.Lift : refit.Lift,
        };
    }
}
