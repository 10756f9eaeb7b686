using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Machines;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Stripping;

/// <summary>
/// Which openings of a job are capped, and with how many caps. What is open on a part that the job replaces or discards gets none: the old
/// one goes, and a new one comes closed.
/// </summary>
internal sealed class Capping
{
    private static readonly Capping None = new([], hasCaps: false);

    private readonly HashSet<Part> _goesAway;
    private readonly bool _hasCaps;

    private Capping(HashSet<Part> goesAway, bool hasCaps) => (_goesAway, _hasCaps) = (goesAway, hasCaps);

    /// <summary>Looks at what a procedure replaces or discards.</summary>
    public static Capping Of(MachineFacts facts, Procedure procedure) => !facts.HasCaps ? None : Of(
        facts,
        procedure.Stages.SelectMany(stage => stage.Steps).Concat(procedure.Work)
            .Where(step => step.Verb is Verb.Replace or Verb.Discard)
            .Select(step => step.Target)
            .OfType<Part>());

    /// <summary>The capping of a job that replaces or discards some parts.</summary>
    public static Capping Of(MachineFacts facts, IEnumerable<Part> goesAway) => facts.HasCaps ? new Capping([.. goesAway], hasCaps: true) : None;

    /// <summary>The action that caps what another has just opened; null where nothing has to be capped.</summary>
    public ActionRequest? After(ActionRequest done)
    {
        if (!_hasCaps)
        {
            return null;
        }

        var pieces = done switch
        {
            { Target: Joint { IsTemporary: false } joint } when ActionTable.Opening(joint).Verb == done.Verb && CapsEach(joint) > 0 => done.Value,
            { Verb: Verb.Remove, Target: Part { IsTemporary: false } part } when CapsEach(part) > 0 => 1,
            _ => 0,
        };
        return pieces > 0 ? new ActionRequest(Verb.Cap, done.Target, pieces) : null;
    }

    /// <summary>How many caps go on where one piece of a joint is off, or where a part is out.</summary>
    public int CapsEach(MachineItem item) => item switch
    {
        Joint { Cap: { } cap } joint => (GoesAway(joint.Owner, joint.Other), GoesAway(joint.Other, joint.Owner)) switch
        {
            (not null, not null) => 0,
            (null, null) => cap.Count,
            _ => cap.Count - (cap.Count / 2),
        },
        Part { Cap: { } cap } part => GoesAway(part.Parent, null) is null ? cap.Count : 0,
        _ => 0,
    };

    /// <summary>The part at one end of a joint that goes away for good, while the other end stays; null where there is none.</summary>
    public Part? GoesAway(Joint joint) => GoesAway(joint.Owner, joint.Other) ?? GoesAway(joint.Other, joint.Owner);

    /// <summary>What goes away for good with one end of a joint and not with the other; null where nothing does.</summary>
    private Part? GoesAway(Part? part, Part? other)
    {
        for (; part is not null && other?.IsWithin(part) is not true; part = part.Parent)
        {
            if (_goesAway.Contains(part))
            {
                return part;
            }
        }

        return null;
    }
}
