using System.Globalization;

namespace ProcScript.Mutation.Running;

/// <summary>A test as it runs on the unchanged code.</summary>
/// <param name="Index">Its place among all.</param>
/// <param name="Name">Its name.</param>
/// <param name="Seconds">How long it took.</param>
/// <param name="Failure">What was wrong: such a test can kill nothing.</param>
/// <param name="Reached">The units that it reaches.</param>
internal sealed record UsualTest(int Index, string Name, double Seconds, string Failure, HashSet<int> Reached)
{
    /// <summary>Reads what a worker says.</summary>
    public static UsualTest Parse(string line)
    {
        var parts = line.Split('\t');
        return new UsualTest(
            int.Parse(parts[0], CultureInfo.InvariantCulture),
            parts[1],
            double.Parse(parts[2], CultureInfo.InvariantCulture),
            parts[3],
            [.. parts[4].Split(',', StringSplitOptions.RemoveEmptyEntries).Select(unit => int.Parse(unit, CultureInfo.InvariantCulture))]);
    }
}
