namespace ProcScript.Analysis.Bolts;

/// <summary>What happens when a piece of one thread is put to a hole of another.</summary>
public enum ThreadFit
{
    /// <summary>It does not go in, or drops through: nobody takes the one for the other.</summary>
    None,

    /// <summary>It fits.</summary>
    Same,

    /// <summary>It starts, then jams or strips: M8 × 1.25 and M8 × 1, M12 and 1/2-13.</summary>
    Near,

    /// <summary>It would fit or start but for its hand.</summary>
    OtherHand,
}

/// <summary>Tells how threads go together.</summary>
public static class ThreadFits
{
    /// <summary>
    /// The share of the coarser pitch by which two diameters may differ and the smaller thread still catches about half of the depth or more:
    /// 5/16·√3, half of the depth of the basic profile taken on both sides (ISO 68-1, ASME B1.1: D − D1 = 5/8·√3·P; from memory). Less than
    /// that is felt as play at once (common practice, no source).
    /// </summary>
    public const double HalfDepth = 0.54126587736527415;

    /// <summary>Markings are rounded no coarser than this, in mm.</summary>
    private const double Rounding = 0.0005;

    /// <summary>How a piece of the one thread goes with the hole of the other, whichever is which.</summary>
    public static ThreadFit Between(ThreadDesignation one, ThreadDesignation other)
    {
        ArgumentNullException.ThrowIfNull(one);
        ArgumentNullException.ThrowIfNull(other);
        var difference = Math.Abs(one.Diameter - other.Diameter);
        return difference > HalfDepth * Math.Max(one.Pitch, other.Pitch) ? ThreadFit.None
            : one.IsLeftHand != other.IsLeftHand ? ThreadFit.OtherHand
            : difference < Rounding && Math.Abs(one.Pitch - other.Pitch) < Rounding ? ThreadFit.Same
            : ThreadFit.Near;
    }
}
