using System.Collections.Immutable;
using ProcScript.Model.Quantities;
using ProcScript.Model.Rules.Wording;

namespace ProcScript.Model.Binding.Quantities;

/// <summary>What a place in the text asks of a quantity.</summary>
/// <param name="Word">The property, as the author writes it.</param>
/// <param name="Dimensions">What it may measure; empty for anything.</param>
/// <param name="Least">The least it may be, in the base unit.</param>
/// <param name="IsLeastAllowed">Whether it may be just that.</param>
/// <param name="Most">The most it may be, in the base unit.</param>
internal sealed record QuantityDemand(
    string Word,
    ImmutableArray<Dimension> Dimensions,
    double Least = 0,
    bool IsLeastAllowed = false,
    double Most = double.PositiveInfinity)
{
    /// <summary>Whether a range may run downwards, for it tells of a way and not of a band.</summary>
    public bool MayFall { get; init; }

    /// <summary>What it may measure, in words: <c>a mass or a volume</c>.</summary>
    public string Words => WordList.Or(Dimensions.Where(one => one != Dimension.Count).Select(one => one.WithArticle()));

    /// <summary>The amount of a supply: pieces, or so much of it.</summary>
    public static readonly QuantityDemand Uses = new("uses", [Dimension.Count, Dimension.Mass, Dimension.Volume, Dimension.Length]);

    /// <summary>How far a fastener is turned on.</summary>
    public static readonly QuantityDemand TorqueAngle = new("torque", [Dimension.Angle]);

    /// <summary>A reading may be anything.</summary>
    public static readonly QuantityDemand Expect = new("expect", [], double.NegativeInfinity);

    private static readonly ImmutableDictionary<string, QuantityDemand> ByProperty = new QuantityDemand[]
    {
        new("length", [Dimension.Length]),
        new("torque", [Dimension.Torque]),
        new("prevailing", [Dimension.Torque]),
        new("size", [Dimension.Length]),
        new("mass", [Dimension.Mass]),
        new("spare", [Dimension.Ratio], IsLeastAllowed: true, Most: 1),
        new("wait", [Dimension.Time], IsLeastAllowed: true),
        new("charge", [Dimension.Mass, Dimension.Volume]),
        new("takes", [Dimension.Time]),
        new("attended", [Dimension.Time], IsLeastAllowed: true),
        new("time", [Dimension.Time]),
        new("cure", [Dimension.Time]),
        new("range", [Dimension.Torque]),
        new("reach", [Dimension.Length]),
        new("height", [Dimension.Length], IsLeastAllowed: true) { MayFall = true },
        new("voltage", [Dimension.Voltage]),
        new("twist", [Dimension.Angle], IsLeastAllowed: true, Most: 180),
        new("frequency", [Dimension.Frequency]),
        new("add", [Dimension.Mass, Dimension.Volume]),
        new("take", [Dimension.Mass, Dimension.Volume]),
    }.ToImmutableDictionary(demand => demand.Word, StringComparer.Ordinal);

    /// <summary>What the property of that name asks.</summary>
    public static QuantityDemand Of(string property) => ByProperty[property];

    /// <summary>The same; null for a property that takes no figure.</summary>
    public static QuantityDemand? Find(string property) => ByProperty.GetValueOrDefault(property);
}
