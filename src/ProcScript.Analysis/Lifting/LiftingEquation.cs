using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Lifting;

/// <summary>
/// The revised NIOSH lifting equation: RWL = LC·HM·VM·DM·AM·FM·CM, the load that nearly all healthy workers may lift over a working day
/// (Publication 94-110, revised 9/2021, in the public domain; read in a stored double-checked transcription). Its metric and its US form
/// have constants of their own, which do not convert into each other to the last digit. It covers smooth two-handed lifts by one standing
/// person; not lifts by several people, with one hand, seated, kneeling, in tight places, of hot, cold or shifting loads.
/// </summary>
public sealed record LiftingEquation
{
    private LiftingEquation()
    {
    }

    /// <summary>The metric form: lengths in cm, the limit in kg.</summary>
    public static LiftingEquation Metric { get; } = new()
    {
        LoadConstant = 23,
        NearestReach = 25,
        FarthestReach = 63,
        KnuckleHeight = 75,
        HighestReach = 175,
        HeightSlope = 0.003,
        TravelTerm = 4.5,
        LeastTravel = 25,
        MostTravel = 175,
    };

    /// <summary>The US form: lengths in in, the limit in lb.</summary>
    public static LiftingEquation Customary { get; } = new()
    {
        LoadConstant = 51,
        NearestReach = 10,
        FarthestReach = 25,
        KnuckleHeight = 30,
        HighestReach = 70,
        HeightSlope = 0.0075,
        TravelTerm = 1.8,
        LeastTravel = 10,
        MostTravel = 70,
    };

    /// <summary>LC: what may be lifted where everything is ideal, 23 kg or 51 lb.</summary>
    public required double LoadConstant { get; init; }

    private double NearestReach { get; init; }

    private double FarthestReach { get; init; }

    private double KnuckleHeight { get; init; }

    private double HighestReach { get; init; }

    private double HeightSlope { get; init; }

    private double TravelTerm { get; init; }

    private double LeastTravel { get; init; }

    private double MostTravel { get; init; }

    /// <summary>RWL: the recommended weight limit, in kg or lb; 0 where the equation allows no lift at all.</summary>
    public double Limit(LiftingTask task)
    {
        ArgumentNullException.ThrowIfNull(task);
        var height = task.Vertical ?? KnuckleHeight;
        return LoadConstant
            * HorizontalMultiplier(task.Horizontal ?? NearestReach)
            * VerticalMultiplier(height)
            * DistanceMultiplier(task.Distance ?? 0)
            * AsymmetryMultiplier(task.Asymmetry)
            * FrequencyMultiplier(task.Frequency, task.Duration, height)
            * CouplingMultiplier(task.Coupling, height);
    }

    /// <summary>LI: the load over the limit. Up to 1 is the goal; over 3 nearly everybody is at a raised risk.</summary>
    /// <param name="load">The load, in kg or lb.</param>
    /// <param name="task">The lift.</param>
    /// <returns>The index; infinite where the equation allows no lift at all.</returns>
    public double Index(double load, LiftingTask task) => Limit(task) is > 0 and var limit ? load / limit : double.PositiveInfinity;

    /// <summary>HM: 25/H (10/H); 0 beyond 63 cm (25 in).</summary>
    public double HorizontalMultiplier(double horizontal) =>
        horizontal > FarthestReach ? 0 : NearestReach / Math.Max(horizontal, NearestReach);

    /// <summary>VM: falls off from knuckle height, 75 cm (30 in), both ways; 0 above 175 cm (70 in) and below the floor.</summary>
    public double VerticalMultiplier(double vertical) =>
        vertical > HighestReach || vertical < 0 ? 0 : 1 - (HeightSlope * Math.Abs(vertical - KnuckleHeight));

    /// <summary>DM: 0.82 + 4.5/D (1.8/D), 1 up to 25 cm (10 in); 0 beyond 175 cm (70 in).</summary>
    public double DistanceMultiplier(double distance) =>
        distance > MostTravel ? 0 : Math.Min(1, 0.82 + (TravelTerm / Math.Max(distance, LeastTravel)));

    /// <summary>AM: 1 − 0.0032 A; 0 beyond 135°.</summary>
    public static double AsymmetryMultiplier(double degrees) => Math.Abs(degrees) > 135 ? 0 : 1 - (0.0032 * Math.Abs(degrees));

    /// <summary>FM: table 5, by the height of the hands at the start.</summary>
    public double FrequencyMultiplier(double perMinute, LiftingDuration duration, double vertical) =>
        LiftingFrequency.Multiplier(perMinute, duration, isLow: vertical < KnuckleHeight);

    /// <summary>
    /// CM: table 7: fair 0.95 below knuckle height and 1 from there on (read); good 1 and poor 0.90 (from memory).
    /// </summary>
    public double CouplingMultiplier(LiftGrip grip, double vertical) => grip switch
    {
        LiftGrip.Poor => 0.90,
        LiftGrip.Fair when vertical < KnuckleHeight => 0.95,
        _ => 1,
    };
}
