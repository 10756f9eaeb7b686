using System.Collections.Immutable;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Plans.Words;

/// <summary>
/// Where the joints of a job are, as its cards say it. Where two of them would read the same, such as the plugs of a left and a right motor
/// in one controller, the part at the other end is named too.
/// </summary>
internal sealed class StepPlaces
{
    private readonly ImmutableArray<PlannedStep> _steps;
    private readonly HashSet<Joint> _withOtherEnd;

    private StepPlaces(ImmutableArray<PlannedStep> steps)
    {
        _steps = steps;
        _withOtherEnd =
        [
            .. from step in steps
               let joint = step.Joint
               where joint is not null
               group joint by (StepText.Of(step), ItemWords.Place(joint)) into alike
               where alike.Select(OtherEnd).Distinct().Skip(1).Any()
               from one in alike
               select one,
        ];
    }

    /// <summary>Looks at all steps of a job.</summary>
    public static StepPlaces Of(ImmutableArray<PlannedStep> steps) => new(steps);

    /// <summary>Where the joint of a step is; empty where it is about none.</summary>
    public string Of(PlannedStep step) => step.Joint switch
    {
        null => "",
        var joint when _withOtherEnd.Contains(joint) && OtherEnd(joint) is { } other => step.Book.Say("place.to", ("place", ItemWords.Place(joint)), ("other", other.Title)),
        var joint => ItemWords.Place(joint),
    };

    /// <summary>The steps of one direction that read the same for different items, each group in the order of the steps.</summary>
    public IEnumerable<ImmutableArray<PlannedStep>> ReadingTheSame() =>
        from step in _steps
        where step.Target is not null && step.Cap is null
        group step by (step.Phase, StepText.Of(step), Of(step)) into alike
        where alike.Select(step => step.Target).Distinct().Skip(1).Any()
        select alike.ToImmutableArray();

    private static Part? OtherEnd(Joint joint) => joint.Other ?? joint.Over?.Other;
}
