using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Totals;

namespace ProcScript.Analysis.Necessity;

/// <summary>What the lines of a procedure cost: the seconds that their steps, and those that undo them, hold somebody's hands.</summary>
internal sealed class NeedlessTime
{
    private readonly List<double[]> _variants = [];

    /// <summary>Adds up every line in every variant.</summary>
    public NeedlessTime(ProcedureFamily family, StepUnits units)
    {
        foreach (var outcome in family.Own.Select(member => member.Outcome))
        {
            var seconds = new double[units.Count];
            foreach (var (step, action) in StepList.Of(outcome.Strip!, outcome.Refit!).Steps.Zip(outcome.Strip!.Actions.Concat(outcome.Refit!.Actions)))
            {
                if (units.Of(action.Origin is InverseOf inverse ? inverse.Action : action) is >= 0 and var unit)
                {
                    seconds[unit] += StepTime.Of(step).Attended;
                }
            }

            _variants.Add(seconds);
        }
    }

    /// <summary>The seconds of some lines, in the variant in which they are most.</summary>
    public double Of(IEnumerable<int> lines) => _variants.Max(seconds => lines.Sum(line => seconds[line]));
}
