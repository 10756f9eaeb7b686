using System.Collections.Immutable;

namespace ProcScript.Jobs.Learning;

/// <summary>How far figures from several jobs lie apart. Each job counts once, and one that went badly moves nothing by itself.</summary>
/// <param name="Jobs">How many jobs they are from.</param>
/// <param name="Low">The first quartile; of fewer than five jobs the least.</param>
/// <param name="Median">The median.</param>
/// <param name="High">The third quartile; of fewer than five jobs the most.</param>
public sealed record Spread(int Jobs, double Low, double Median, double High)
{
    /// <summary>From so many jobs on the middle half is told; of fewer it would leave out nearly nothing, so all are.</summary>
    public const int EnoughForQuartiles = 5;

    /// <summary>Figures closer than this share of one another are the same: the noise of binary fractions is no difference.</summary>
    private const double Noise = 1e-6;

    /// <summary>The spread of some figures, one for each job.</summary>
    /// <param name="figures">The figures, in any order; at least one.</param>
    public static Spread Of(IEnumerable<double> figures)
    {
        ImmutableArray<double> sorted = [.. figures.Order()];
        return sorted.Length < EnoughForQuartiles
            ? new Spread(sorted.Length, sorted[0], Quantile(sorted, 0.5), sorted[^1])
            : new Spread(sorted.Length, Quantile(sorted, 0.25), Quantile(sorted, 0.5), Quantile(sorted, 0.75));
    }

    /// <summary>The median of some figures.</summary>
    /// <param name="figures">The figures, in any order; at least one.</param>
    public static double MedianOf(IEnumerable<double> figures) => Quantile([.. figures.Order()], 0.5);

    /// <summary>Whether a figure lies within the spread.</summary>
    /// <param name="figure">The figure.</param>
    public bool Holds(double figure) => figure >= Low * (1 - Noise) && figure <= High * (1 + Noise);

    /// <summary>A quantile of sorted figures, between two of them by straight interpolation (Hyndman and Fan's type 7).</summary>
    private static double Quantile(ImmutableArray<double> sorted, double share)
    {
        var place = share * (sorted.Length - 1);
        var below = (int)Math.Floor(place);
        return below + 1 < sorted.Length ? sorted[below] + ((place - below) * (sorted[below + 1] - sorted[below])) : sorted[below];
    }
}
