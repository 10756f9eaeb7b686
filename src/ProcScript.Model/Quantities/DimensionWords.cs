namespace ProcScript.Model.Quantities;

/// <summary>What people call the dimensions.</summary>
public static class DimensionWords
{
    /// <summary>The dimension with its article: <c>a torque</c>.</summary>
    public static string WithArticle(this Dimension dimension) => dimension switch
    {
        Dimension.Torque => "a torque",
        Dimension.Length => "a length",
        Dimension.Mass => "a mass",
        Dimension.Volume => "a volume",
        Dimension.Pressure => "a pressure",
        Dimension.Temperature => "a temperature",
        Dimension.Time => "a time",
        Dimension.Voltage => "a voltage",
        Dimension.Current => "a current",
        Dimension.Resistance => "a resistance",
        Dimension.Force => "a force",
        Dimension.Ratio => "a share",
        Dimension.Frequency => "a frequency",
        Dimension.Flow => "a flow",
        Dimension.Angle => "an angle",
        Dimension.Count => "a number of pieces",
        _ => throw new ArgumentOutOfRangeException(nameof(dimension), dimension, null),
    };
}
