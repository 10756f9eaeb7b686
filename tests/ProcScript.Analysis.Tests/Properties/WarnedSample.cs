using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Tests.Plans;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Tests.Properties;

/// <summary>A random machine with alerts and hazards, stripped at random over several cards.</summary>
internal sealed class WarnedSample
{
    private readonly Dictionary<int, PerformedAction> _actions;

    private WarnedSample(string text, ProcedureReport report)
    {
        (Text, Report, Plan) = (text, report, report.CreatePlan()!);
        _actions = report.Outcome.Strip!.Actions.Concat(report.Outcome.Refit!.Actions).ToDictionary(action => action.Number + 1);
        Cards =
        [
            .. Plan.Strip.Select(card => new WarnedCard(card, IsRefit: false)),
            new(Plan.Work, IsRefit: false),
            .. Plan.Refit.Select(card => new WarnedCard(card, IsRefit: true)),
        ];
    }

    public string Text { get; }

    public ProcedureReport Report { get; }

    public Plan Plan { get; }

    public IReadOnlyList<WarnedCard> Cards { get; }

    public Machine Machine => Report.Procedure.Machine;

    /// <summary>The number of the first step after which something may be hot on the way back; none where no power comes back.</summary>
    public int PowerBack => Plan.Refit.SelectMany(card => card.Steps).Where(step => step.Verb == "restore").Select(step => step.Number).FirstOrDefault(int.MaxValue);

    /// <summary>
    /// The steps of the refit that a step's own words hold for: the one that undoes it and, of a support whose part came out of it, the one that
    /// sets it again; where both stand on a card, the first.
    /// </summary>
    public int[] Mirrors(PerformedAction action)
    {
        var again = Report.Outcome.Refit!.Actions.Where(other => other.Origin is PropAgain { Support: var support } && support == action);
        int[] numbers = [.. again.Select(other => other.Number + 1), Plan.AllSteps()[action.Number].Mirror];
        return [.. numbers.Order().DistinctBy(number => Plan.Refit.ToList().FindIndex(card => card.Steps.Any(step => step.Number == number)))];
    }

    public PerformedAction Action(PlanStep step) => _actions[step.Number];

    /// <summary>A sample; null where it is not proven.</summary>
    public static WarnedSample? Of((int Parts, uint Machine, uint Strip) seed)
    {
        var declarations = RandomMachine.Declarations(seed.Parts, seed.Machine, asymmetric: true, warned: true);
        var walk = RandomStrip.Walk(Sample.Bind(declarations), steps: 24, seed.Strip);
        var text = RandomMachine.Text(declarations) + Procedure(walk, seed.Strip);
        var procedure = Checked.Unasked(text).Only;
        return procedure.IsProven ? new WarnedSample(text, procedure) : null;
    }

    private static string Procedure(List<Move> walk, uint seed)
    {
        var random = new Random((int)seed);
        var warnings = new RandomWarnings(seed);
        var stages = walk.Select((move, i) =>
            $"{(random.Next(4) == 0 ? warnings.Alert($"step {i}") : "")} {RandomStrip.Print(move)}{(random.Next(5) == 0 ? $" {{ {warnings.Alert($"block {i}")} }}" : "")}\n");
        var work = walk.Where(move => move.Verb == Verb.Remove).Select(move => $"clean {move.Item.Name}\n");
        return $"procedure p \"P\" on m {{\n{string.Concat(stages.Chunk(6).Select((steps, i) => $"stage \"S{i}\" {{\n{string.Concat(steps)}}}\n"))}work {{\n{string.Concat(work)}}}\n}}\n";
    }
}

/// <summary>A card and the way it goes.</summary>
internal sealed record WarnedCard(PlanStage Stage, bool IsRefit);
