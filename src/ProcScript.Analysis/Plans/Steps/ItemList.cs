using System.Collections.Immutable;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Plans.Steps;

/// <summary>The items that a plan is about, with those that they hang together with, in the order in which they are met.</summary>
internal static class ItemList
{
    /// <summary>Lists them.</summary>
    public static ImmutableArray<PlanItem> Of(IEnumerable<MachineItem> named)
    {
        var seen = new HashSet<MachineItem>();
        var items = ImmutableArray.CreateBuilder<PlanItem>();
        var waiting = new Queue<MachineItem>(named);
        while (waiting.TryDequeue(out var item))
        {
            if (seen.Add(item))
            {
                items.Add(Of(item));
                foreach (var other in Beside(item))
                {
                    waiting.Enqueue(other);
                }
            }
        }

        return items.DrainToImmutable();
    }

    private static IEnumerable<MachineItem> Beside(MachineItem item) => item switch
    {
        Part { Parent: { } parent } => [parent],
        Joint joint => new MachineItem?[] { joint.Owner, joint.Other, joint.Over, joint.On, joint.Carries }.OfType<MachineItem>(),
        _ => [],
    };

    private static PlanItem Of(MachineItem item) => item switch
    {
        Part part => new PlanItem(part.Name, part.Title, "part") { Parent = part.Parent?.Name ?? "" },
        Joint joint => new PlanItem(joint.Name, joint.Title, joint.Role.ToString().ToLowerInvariant())
        {
            Ends = joint.Role == JointRole.Cover ? [joint.Owner.Name] : [joint.Owner.Name, joint.Other?.Name ?? ""],
            Count = joint.Count,
            Kind = joint.Kind.Name,
            Covers = joint.Over?.Name ?? "",
            On = joint.On?.Name ?? "",
            Carries = joint.Carries?.Name ?? "",
        },
        Control control => new PlanItem(control.Name, control.Title, "control") { Positions = control.Positions },
        _ => new PlanItem(item.Name, item.Title, item is Energy ? "energy" : "fluid"),
    };
}
