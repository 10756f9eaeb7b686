using ProcScript.Model.Catalog;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Totals;

/// <summary>
/// The times in seconds that count where the author gives none. All are bench figures for small parts in reach of the hand, with
/// the tool in it, and rounded: common practice, no source. They lie within the ranges that the trade names from memory (a screw
/// undone or done 6–10 s, a clip 2–4 s, a plug 3–6 s) and are of the order of published figures for assembly by hand (a screw
/// picked up in 1.8 s and screwed down in 8.0 s; small parts handled in 1.13–5.6 s and inserted in 1.5–10.7 s, Boothroyd and
/// Dewhurst in Whitney 2004). Work in a cab is slower by a factor that nobody publishes, so a plan shows them as an estimate.
/// </summary>
internal static class UsualTimes
{
    /// <summary>Setting something going that then runs by itself, where no <c>attended</c> is given.</summary>
    public const double SetGoing = 60;

    /// <summary>Emptying or filling, where no <c>takes</c> is given.</summary>
    public const double FluidHandling = 600;

    /// <summary>
    /// Pulling a vacuum until the moisture is out, by a pump for one circuit of a few kilograms: 30 min is the least that the trade keeps to
    /// (common practice, no source).
    /// </summary>
    public const double Evacuating = 1800;

    /// <summary>Recovering a refrigerant by a machine: common practice, no source.</summary>
    public const double Recovering = 900;

    /// <summary>Charging by weight: common practice, no source.</summary>
    public const double Charging = 600;

    /// <summary>Heating a housing, a hub or a joint until it can be worked: common practice, no source.</summary>
    public const double Heating = 600;

    /// <summary>A lift by a hoist: bringing it, slinging, taking the slack, lifting out or in, and setting down. Common practice, no source.</summary>
    public const double Hoisting = 600;

    /// <summary>A cover, for one; mostly a cap that snaps on.</summary>
    public const double Cover = 3;

    /// <summary>A cap put on or taken off.</summary>
    public const double Cap = 5;

    /// <summary>One joint, opened or closed.</summary>
    public static double PerJoint(KindCategory category) => category switch
    {
        KindCategory.Fastener => 8,
        KindCategory.Clip => 3,
        KindCategory.Connector => 5,
        KindCategory.Line => 30,
        KindCategory.Bond => 20,
        _ => 0,
    };

    /// <summary>An action that is not counted by the piece.</summary>
    public static double PerAction(Verb verb) => verb switch
    {
        Verb.Aside or Verb.Return => 20,
        Verb.Remove or Verb.Fit => 30,
        Verb.Set => 10,
        Verb.Isolate or Verb.Restore or Verb.Verify => 30,
        Verb.Empty or Verb.Fill => FluidHandling,
        Verb.Support or Verb.Unsupport => 60,
        Verb.Replace or Verb.Repair or Verb.Clean or Verb.Inspect or Verb.Adjust or Verb.Task => 120,
        Verb.Check or Verb.Measure or Verb.Record => 60,
        _ => 0,
    };
}
