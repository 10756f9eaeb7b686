using System.Collections.Immutable;

namespace ProcScript.Model.Quantities;

/// <summary>How tight: the torques of one stage after the other, then how far it is turned on.</summary>
/// <param name="Stages">The torques; at least one.</param>
/// <param name="Angles">The angles after the last torque; mostly none.</param>
public sealed record TighteningTorque(ImmutableArray<Quantity> Stages, ImmutableArray<Quantity> Angles)
{
    /// <summary>The torque of the last stage; where angles follow, only the torque that they start from.</summary>
    public Quantity Final => Stages[^1];

    /// <summary>Whether the last of it is an angle, so that no torque says how tight it ends.</summary>
    public bool IsToAngle => !Angles.IsEmpty;

    /// <inheritdoc/>
    public bool Equals(TighteningTorque? other) =>
        other is not null && Stages.SequenceEqual(other.Stages) && Angles.SequenceEqual(other.Angles);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Stages.Length, Final, Angles.Length);
}
