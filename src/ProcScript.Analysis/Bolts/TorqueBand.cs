using ProcScript.Analysis.Settings;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Bolts;

/// <summary>
/// The torques that make sense for a bolt, wide enough that sound practice lies within.
/// <para>
/// The most is the torque that reaches the proof load with the <em>highest</em> K that sources give for the surface. Tables aim at 75 % of
/// proof load, and torque scatters the preload by ±25 to 30 %: three quarters and a quarter more is just short of proof load, so a torque
/// whose own tolerance reaches it leaves nothing for the scatter, and many of the bolts will yield.
/// </para>
/// <para>
/// The least is a fifth of that, with the <em>lowest</em> K: about a quarter of what tables aim at. Common practice, no source. A bolt
/// into plastic, a trim bolt or one that only locates may well have less, so what lies below is worth a word, not a warning.
/// </para>
/// Of a torque to an angle only the top is judged: the torque is where the angle starts, and the angle makes the preload.
/// </summary>
/// <param name="Bolt">The bolt.</param>
/// <param name="Factor">The nut factor of its surface.</param>
public sealed record TorqueBand(Bolt Bolt, NutFactor Factor)
{
    /// <summary>The share of the proof load below which a preload is called weak.</summary>
    public double WeakShare { get; init; } = SettingsTable.WeakTorque.BuiltIn.BaseValue;

    /// <summary>The share of the proof load beyond which a preload is too much.</summary>
    public double StrongShare { get; init; } = SettingsTable.StrongTorque.BuiltIn.BaseValue;

    /// <summary>The largest sound torque in N·m.</summary>
    public double Most => Bolt.TorqueFor(StrongShare * Bolt.ProofLoad, Factor.High);

    /// <summary>The smallest torque in N·m that is not called weak.</summary>
    public double Least => Bolt.TorqueFor(WeakShare * Bolt.ProofLoad, Factor.Low);

    /// <summary>The band of a kind; null where thread, grade or surface are not known well enough.</summary>
    public static TorqueBand? Of(Kind kind)
    {
        ArgumentNullException.ThrowIfNull(kind);
        return BoltStrength.Of(kind).Band;
    }

    /// <summary>The band of a joint, which may go in oiled or with locker where its kind does not; null as for a kind.</summary>
    public static TorqueBand? Of(Joint joint)
    {
        ArgumentNullException.ThrowIfNull(joint);
        return BoltStrength.Of(joint).Band;
    }

    /// <summary>Whether a stage, at the most that its tolerance allows, goes beyond the largest sound torque.</summary>
    public bool IsBeyond(TighteningTorque torque)
    {
        ArgumentNullException.ThrowIfNull(torque);
        return torque.Stages.Max(NewtonMetres) > Most;
    }

    /// <summary>Whether the last torque, at the most that its tolerance allows, is weak; never where an angle follows.</summary>
    public bool IsTooWeak(TighteningTorque torque)
    {
        ArgumentNullException.ThrowIfNull(torque);
        return !torque.IsToAngle && NewtonMetres(torque.Final) < Least;
    }

    private static double NewtonMetres(Quantity torque) => torque.High * torque.Unit.Factor;
}
