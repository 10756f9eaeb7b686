using System.Globalization;
using ProcScript.Analysis.Fluids;
using ProcScript.Jobs.Replays;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;

namespace ProcScript.Jobs.Closing;

/// <summary>What came out of a machine of a fluid, and what went in.</summary>
/// <param name="Fluid">The fluid's name.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Nameplate">The nameplate charge, in words; empty where none is given.</param>
/// <param name="Recovered">What came out, as it was written down; empty where nothing was.</param>
/// <param name="Charged">What went in, as it was written down; empty where nothing was.</param>
/// <param name="FillTo">From the least to the most that is right, in words; empty where no tolerance is given.</param>
/// <param name="Verdict">What that comes to, in plain words.</param>
/// <param name="IsRight">Whether what is in now is right, as far as it is known.</param>
public sealed record FluidBalance(string Fluid, string Title, string Nameplate, string Recovered, string Charged, string FillTo, string Verdict, bool IsRight)
{
    /// <summary>The balance of every fluid that the job's cards empty or fill.</summary>
    /// <param name="replay">The job.</param>
    public static IEnumerable<FluidBalance> Of(JobReplay replay)
    {
        ArgumentNullException.ThrowIfNull(replay);
        return replay.Course.Steps.Where(step => step.Verb is Verb.Empty or Verb.Fill).Select(step => step.Target).OfType<Fluid>().Distinct().Select(fluid => Of(replay, fluid));
    }

    private static FluidBalance Of(JobReplay replay, Fluid fluid)
    {
        var (recovered, charged) = (Last(replay, fluid, Verb.Empty), Last(replay, fluid, Verb.Fill));
        var limit = replay.Course.Steps.LastOrDefault(step => step.Verb == Verb.Fill && step.Target == fluid)?.Expect?.Quantity;
        var (verdict, isRight) = Judge(fluid, recovered, charged, limit);
        return new FluidBalance(fluid.Name, fluid.Title, fluid.Charge?.Print() ?? "", recovered, charged, limit?.Print() ?? "", verdict, isRight);
    }

    private static (string Verdict, bool IsRight) Judge(Fluid fluid, string recovered, string charged, Quantity? band)
    {
        if (fluid.Charge is not { } charge)
        {
            return ("The machine's text gives no charge to compare with.", true);
        }

        var words = new List<string>();
        if (Amount(recovered, charge.Unit) is { } outside && charge.Nominal > 0)
        {
            var share = outside / charge.Nominal;
            if (share < RefrigerantService.LeastRecovered)
            {
                words.Add($"It came in {Number(charge.Nominal - outside, charge.Unit)} short of its nameplate ({Percent(share)} of it came out): look for a leak, or for what is still in.");
            }
            else if (outside > charge.High)
            {
                words.Add($"It came in overcharged by {Number(outside - charge.Nominal, charge.Unit)}.");
            }
        }

        var isRight = true;
        if (Amount(charged, charge.Unit) is { } inside && band?.In(charge.Unit) is { } right)
        {
            isRight = inside >= right.Low - Slack(right) && inside <= right.High + Slack(right);
            words.Add(isRight ? "It is charged as it has to be."
                : inside > right.High ? $"It is overcharged by {Number(inside - right.High, charge.Unit)}: {Number(inside, charge.Unit)} went in, and {Number(right.High, charge.Unit)} is the most."
                : $"It is undercharged by {Number(right.Low - inside, charge.Unit)}: {Number(inside, charge.Unit)} went in, and {Number(right.Low, charge.Unit)} is the least.");
        }

        return (string.Join(" ", words), isRight);
    }

    private static string Last(JobReplay replay, Fluid fluid, Verb verb) =>
        replay.Readings.LastOrDefault(reading => replay.Course.Step(reading.Step) is { } step && step.Verb == verb && step.Target == fluid)?.Value ?? "";

    private static double? Amount(string value, Unit unit) => value.Length == 0 ? null : ReadingCheck.Quantity(value, unit)?.In(unit).Nominal;

    private static double Slack(Quantity band) => 1e-9 * Math.Max(1, Math.Abs(band.High));

    private static string Number(double value, Unit unit) => $"{Math.Round(value, 3).ToString("0.###", CultureInfo.InvariantCulture)} {unit.Symbol}";

    private static string Percent(double share) => $"{Math.Round(100 * share).ToString(CultureInfo.InvariantCulture)} %";
}
