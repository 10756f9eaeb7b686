using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Energies;

/// <summary>The last of what holds a hanging part comes off, and nothing bears it. Common practice, no source.</summary>
public sealed class LoadWithoutSupport : StripRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5047", "load-without-support", "What holds a hanging part comes off, and nothing bears it", Severity.Warning)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A part with the mark `hazard suspended_load` loses the last joint that holds it, and it is neither supported nor lifted by a "
            + "`hoist`.",
        Why: "It falls, on the hands or the head of whoever is under it. It is a warning because two people may hold it; allow it then, and "
            + "say who holds what.",
        Wrong: """
            tool socket_13 "13 mm socket"
            fastener hex "hex bolt" { drive socket_13 }

            machine tractor "Tractor" {
              part sump "sump guard" {
                hazard suspended_load
                held by 4 hex as guard_bolts
              }
            }

            procedure guard_off "Take the sump guard off" on tractor {
              stage "Guard" {
                undo guard_bolts
                remove sump
              }
            }
            """,
        Right: """
            tool socket_13 "13 mm socket"
            fastener hex "hex bolt" { drive socket_13 }

            machine tractor "Tractor" {
              part sump "sump guard" {
                hazard suspended_load
                held by 4 hex as guard_bolts
              }
            }

            procedure guard_off "Take the sump guard off" on tractor {
              stage "Guard" {
                support sump
                undo guard_bolts
                remove sump
              }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(StripRun run)
    {
        var (loads, left) = Holding(run.Procedure.Machine);
        var borne = new HashSet<Part>();
        foreach (var action in left.Count == 0 ? [] : run.Actions)
        {
            if (action is { Verb: Verb.Support or Verb.Remove, Target: Part part })
            {
                borne.Add(part);
            }
            else if (action is { Target: Joint { IsTemporary: true } strap, Changes: [{ Variable.Kind: StateKind.Attached, Before: 0 }] })
            {
                // A strap holds what it is put on.
                foreach (var load in loads[strap])
                {
                    left[load]++;
                }
            }
            else if (action is { Target: Joint joint, Changes: [{ Variable.Kind: StateKind.Attached, After: 0 }] })
            {
                foreach (var load in loads[joint].Where(load => --left[load] == 0 && !IsBorne(load, borne)))
                {
                    if (RefitFinding.Step(action) is { } step && !IsHoisted(run, load, action))
                    {
                        yield return At(run, step, load, joint);
                    }
                }
            }
        }
    }

    private static bool IsBorne(Part load, HashSet<Part> borne)
    {
        for (var part = load; part is not null; part = part.Parent)
        {
            if (borne.Contains(part))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The hanging parts by the joints that hold them, and by how many each is held at the start.</summary>
    private static (ILookup<Joint, Part> Loads, Dictionary<Part, int> Left) Holding(Model.Machines.Machine machine)
    {
        var holds =
            from joint in machine.Joints
            where joint.Role == JointRole.Held
            from part in Assemblies.BelowTheCommonPart(joint)
            where part.Has(Hazard.SuspendedLoad) && !part.Hoist
            select (joint, part);
        var all = machine.Parts.Any(part => part.Has(Hazard.SuspendedLoad)) ? holds.ToList() : [];
        return (all.ToLookup(hold => hold.joint, hold => hold.part), all.GroupBy(hold => hold.part).ToDictionary(part => part.Key, part => part.Count(hold => !hold.joint.IsTemporary)));
    }

    private static bool IsHoisted(StripRun run, Part part, PerformedAction last) =>
        StepOrigin.Details(last).Hoist
        || run.Actions.Any(action => action.Verb == Verb.Remove && action.Target == part && StepOrigin.Details(action).Hoist);

    private static Finding At(StripRun run, Step step, Part part, Joint joint) =>
        StepFinding.At(
            Id,
            step,
            $"{ItemPhrases.The(part)} hangs, and nothing bears it when `{joint.Name}` comes off",
            "the last of what holds it",
            new LabeledSpan(part.Declared, "hangs and can fall")) with
        {
            Help = $"write `support {part.Name}` before, or `hoist` where a hoist lifts it",
            Fixes = [.. StepEdits.InsertBefore(run, step, [new NamedAction(Verb.Support, part)])],
        };
}
