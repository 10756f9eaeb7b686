using System.Collections.Immutable;
using ProcScript.Analysis.Machines;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Plans.Steps;

/// <summary>
/// Where the marks of parts and joints stand: each before the first step that moves what it stands on, and again where that is back. A
/// mark on a part is needed where the part comes off or goes aside, or where one of the joints that hold it, or hold something to it, is
/// taken off as a whole. Where the part itself comes off or is freed, the joints that hold things inside it do not count: what lies over the mark has
/// to go first.
/// </summary>
internal sealed class MarkLines
{
    private readonly ILookup<int, string> _made;
    private readonly ILookup<int, PlanMark> _seen;

    private MarkLines(IReadOnlyCollection<(int Step, int Back, string Text, bool IsNew)> marks)
    {
        _made = marks.ToLookup(mark => mark.Step, mark => mark.Text);
        _seen = marks.ToLookup(mark => mark.Back, mark => new PlanMark(mark.Step, mark.Text, mark.IsNew));
    }

    /// <summary>Places the marks of a job.</summary>
    public static MarkLines Of(Machine machine, ImmutableArray<PlannedStep> steps)
    {
        var marks = new List<(int, int, string, bool)>();
        foreach (var part in machine.Parts.Where(part => !part.Marks.IsEmpty))
        {
            Add(part.Marks, Apart(part, machine, steps), Together(part, machine, steps));
        }

        foreach (var joint in machine.Joints.Where(joint => !joint.Marks.IsEmpty))
        {
            Add(joint.Marks, steps.FirstOrDefault(step => Moves(step, joint)), steps.LastOrDefault(step => step.Joint == joint && Returns(step)));
        }

        return new MarkLines(marks);

        void Add(ImmutableArray<string> texts, PlannedStep? apart, PlannedStep? together)
        {
            // What never goes back together needs no mark.
            if (apart is not null && together is not null)
            {
                marks.AddRange(texts.Select(text => (apart.Number, together.Number, text, together.Fate == Fate.Renewed)));
            }
        }
    }

    /// <summary>What to mark before a step.</summary>
    public ImmutableArray<string> Made(int step) => [.. _made[step]];

    /// <summary>The marks that line up once a step is done.</summary>
    public ImmutableArray<PlanMark> Seen(int step) => [.. _seen[step]];

    /// <summary>The first step that moves a part against what it sits on; null where the job leaves it there.</summary>
    private static PlannedStep? Apart(Part part, Machine machine, ImmutableArray<PlannedStep> steps)
    {
        var joints = Parting(part, machine, steps).ToHashSet();
        var isApart = steps.Any(step => IsMoved(step, part)) || joints.Any(joint => IsAllOff(joint, steps));
        return isApart ? steps.First(step => IsMoved(step, part) || (step.Joint is { } joint && joints.Contains(joint) && Moves(step, joint))) : null;
    }

    /// <summary>The step that puts a part back to what it sits on; null where none does.</summary>
    private static PlannedStep? Together(Part part, Machine machine, ImmutableArray<PlannedStep> steps)
    {
        var joints = Parting(part, machine, steps).ToHashSet();
        return steps.LastOrDefault(step => step.Part == part && step.Verb is Verb.Fit or Verb.Return)
            ?? (steps.Any(step => step.Part == part && step.Verb == Verb.Remove)
                ? null
                : steps.FirstOrDefault(step => step is { Closes: true, Joint: { } joint } && joints.Contains(joint) && IsAllOff(joint, steps)));
    }

    private static bool IsMoved(PlannedStep step, Part part) => step.Part == part && step.Verb is Verb.Remove or Verb.Aside;

    /// <summary>The joints that part it from what it sits on: its own; and where none of these is taken off, those that hold something inside it to it.</summary>
    private static IEnumerable<Joint> Parting(Part part, Machine machine, ImmutableArray<PlannedStep> steps)
    {
        var (inside, own) = (Holding(part, machine).Where(joint => joint.Owner != part && joint.Owner.IsWithin(part)).ToList(), Holding(part, machine).ToList());
        own.RemoveAll(inside.Contains);
        return steps.Any(step => IsMoved(step, part)) || own.Exists(joint => IsAllOff(joint, steps)) ? own : inside;
    }

    private static IEnumerable<Joint> Holding(Part part, Machine machine) => machine.Joints.Where(joint =>
        joint.Role == JointRole.Held && (joint.Owner == part || joint.Other == part || Assemblies.BelowTheCommonPart(joint).Contains(part)));

    private static bool IsAllOff(Joint joint, ImmutableArray<PlannedStep> steps) =>
        steps.Where(step => step.Joint == joint && step.Opens).Sum(step => step.Count) >= joint.Count;

    private static bool Moves(PlannedStep step, Joint joint) => step.Joint == joint && (step.Opens || step.Verb == Verb.Loosen);

    private static bool Returns(PlannedStep step) => step.Closes || step.Verb == Verb.Tighten;
}
