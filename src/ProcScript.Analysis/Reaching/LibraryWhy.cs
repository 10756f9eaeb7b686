using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Analysis.Wording;
using ProcScript.Model;
using ProcScript.Model.Machines;
using ProcScript.Model.Names;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Reaching;

/// <summary>Answers what an item has to do with the rest of its machine: what hides it, holds it and feeds it, what it hides, and who touches it.</summary>
public static class LibraryWhy
{
    /// <summary>Looks it up.</summary>
    /// <param name="library">The library.</param>
    /// <param name="item">The item's name, or what people call it.</param>
    /// <param name="machine">The machine's name; null where the item says which.</param>
    /// <param name="with">Exactly the options that the machine has; null for as few as it takes.</param>
    /// <exception cref="ReachRefusedException">There is no answer.</exception>
    public static WhyReport Find(Library library, string item, string? machine = null, ImmutableArray<string>? with = null)
    {
        ArgumentNullException.ThrowIfNull(library);
        var asked = AskedMachine.Find(library, [item], machine, with);
        var (one, target) = (asked.Machine, asked.Items[0]);
        var facts = new MachineFacts(one);
        return new WhyReport
        {
            Machine = one.Name,
            MachineTitle = one.Title,
            With = [.. one.With.Select(option => option.Name)],
            Item = CanonicalName.Written(target.Name),
            Title = ItemWords.Whole(target),
            Hazards = [.. target.Hazards.Select(HazardWords.Of)],
            Alerts = [.. target.Alerts.Select(alert => $"{alert.Word.ToString().ToLowerInvariant()}: {alert.Text}")],
            Needs = [.. Needs(target).Distinct()],
            HeldBy = [.. Holding(facts, target).Select(Joined)],
            FedBy = [.. Feeding(facts, target).Distinct().Select(Named)],
            AskedBy = [.. Asking(one, target).Distinct()],
            RenewedWith = [.. Disturbing(target).Select(Named)],
            Renews = [.. one.Items.Values.Where(other => Disturbing(other).Contains(target)).Select(Named)],
            Inside = target is Part part ? [.. part.Children.Select(Named)] : [],
            TouchedBy = [.. Touching(library, one, target)],
        };
    }

    /// <summary>What has to be so for a hand to get at it, with what it lies in.</summary>
    private static IEnumerable<WhyNeed> Needs(MachineItem target)
    {
        for (var at = target; at is not null; at = at switch { Joint { Over: { } under } => under, Joint joint => joint.Owner, Part part => part.Parent, _ => null })
        {
            IEnumerable<Condition> conditions = at is Part own && at == target ? [.. at.Conditions, .. own.WayOut, .. own.Aside?.Conditions ?? []] : at.Conditions;
            foreach (var condition in conditions)
            {
                yield return new WhyNeed(
                    NeedPhrases.Wanted(condition),
                    CanonicalName.Written(condition.Item.Name),
                    at == target ? "" : ItemPhrases.The(at),
                    condition.Phase switch { NeedsPhase.Strip => "strip", NeedsPhase.Refit => "refit", _ => "" });
            }
        }
    }

    private static IEnumerable<Joint> Holding(MachineFacts facts, MachineItem target) => target switch
    {
        Part part => facts.Ties(part),
        Joint joint => joint.Covers,
        _ => [],
    };

    private static IEnumerable<MachineItem> Feeding(MachineFacts facts, MachineItem target) => target switch
    {
        Part part => part.Joints.Concat(facts.Ties(part)).SelectMany(joint => new MachineItem?[] { joint.On, joint.Carries }).OfType<MachineItem>(),
        Joint joint => new MachineItem?[] { joint.On, joint.Carries }.OfType<MachineItem>(),
        Energy energy => facts.JointsOn(energy),
        Fluid fluid => facts.JointsCarrying(fluid),
        _ => [],
    };

    /// <summary>What asks for it to be out of the way, off, isolated, at a position or the like.</summary>
    private static IEnumerable<WhyAsker> Asking(Machine machine, MachineItem target) =>
        from other in machine.Items.Values
        where other != target
        from wanted in Asked(other, target)
        select new WhyAsker(CanonicalName.Written(other.Name), ItemWords.Whole(other), wanted);

    private static IEnumerable<string> Asked(MachineItem other, MachineItem target)
    {
        var way = (other as Part)?.Aside;
        var own = other is Part part ? part.WayOut.AddRange(way?.Conditions ?? []) : [];
        var wanted = other.Conditions.AddRange(own).Where(condition => condition.Each.Any(one => one.Item == target)).Select(NeedPhrases.Wanted);
        return target is Joint joint && way?.Joints.Contains(joint) == true ? wanted.Append($"{ItemPhrases.The(joint)} open, to go aside") : wanted;
    }

    private static ImmutableArray<MachineItem> Disturbing(MachineItem item) => item switch
    {
        Part part => part.RenewWith,
        Joint joint => joint.RenewWith,
        _ => [],
    };

    /// <summary>The steps of the procedures on the machine that are about it, each line once.</summary>
    private static IEnumerable<WhyStep> Touching(Library library, Machine machine, MachineItem target) =>
        from procedure in library.Procedures
        where procedure.Machine.Declared == machine.Declared
        from step in procedure.Stages.SelectMany(stage => stage.Steps).Concat(procedure.Work)
        where step.Target?.Name == target.Name
        group procedure.Job by (Line: step.Source, step.Verb) into line
        let place = library.Trees.TryGetValue(line.Key.Line.Path, out var tree) ? tree.Text.PositionAt(line.Key.Line.Span.Start).Line + 1 : 0
        orderby line.Key.Line.Path, place
        select new WhyStep(ActionTable.Row(line.Key.Verb).Word, [.. line.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)], line.Key.Line.Path, place);

    private static WhyItem Named(MachineItem item) => new(CanonicalName.Written(item.Name), ItemWords.Whole(item));

    private static WhyJoint Joined(Joint joint) => new(
        CanonicalName.Written(joint.Name),
        ItemWords.Whole(joint),
        ActionTable.Opening(joint).Word,
        [.. joint.Covers.Select(Named)]);
}

/// <summary>What an item has to do with the rest of its machine.</summary>
public sealed record WhyReport
{
    /// <summary>The version of this document's form.</summary>
    public string Format { get; init; } = "1";

    /// <summary>The name of the machine.</summary>
    public required string Machine { get; init; }

    /// <summary>What people call the machine.</summary>
    public required string MachineTitle { get; init; }

    /// <summary>The options that it has in this answer.</summary>
    public required ImmutableArray<string> With { get; init; }

    /// <summary>The item's name.</summary>
    public required string Item { get; init; }

    /// <summary>The item in words.</summary>
    public required string Title { get; init; }

    /// <summary>What it can do to people.</summary>
    public required ImmutableArray<string> Hazards { get; init; }

    /// <summary>The alerts that stand at it.</summary>
    public required ImmutableArray<string> Alerts { get; init; }

    /// <summary>What has to be so for a hand to get at it.</summary>
    public required ImmutableArray<WhyNeed> Needs { get; init; }

    /// <summary>Of a part what ties it to the rest; of a joint what covers or locks it.</summary>
    public required ImmutableArray<WhyJoint> HeldBy { get; init; }

    /// <summary>The energies and fluids that feed it; of these the joints that they are in.</summary>
    public required ImmutableArray<WhyItem> FedBy { get; init; }

    /// <summary>What asks for it to be away, off, at a position or the like: what it is in the way of.</summary>
    public required ImmutableArray<WhyAsker> AskedBy { get; init; }

    /// <summary>What has to come off for it to have to be renewed.</summary>
    public required ImmutableArray<WhyItem> RenewedWith { get; init; }

    /// <summary>What has to be renewed once it comes off.</summary>
    public required ImmutableArray<WhyItem> Renews { get; init; }

    /// <summary>The parts that lie in it.</summary>
    public required ImmutableArray<WhyItem> Inside { get; init; }

    /// <summary>The steps that are about it.</summary>
    public required ImmutableArray<WhyStep> TouchedBy { get; init; }
}

/// <summary>Something that has to be so.</summary>
/// <param name="Text">What, in words.</param>
/// <param name="Item">The item that it is about.</param>
/// <param name="Of">What it is written at, where that is something around; else empty.</param>
/// <param name="Phase"><c>strip</c> or <c>refit</c> where it binds one way only; else empty.</param>
public sealed record WhyNeed(string Text, string Item, string Of, string Phase);

/// <summary>An item.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Title">The item in words.</param>
public sealed record WhyItem(string Name, string Title);

/// <summary>An item that asks something of the one that the question is about.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Title">The item in words.</param>
/// <param name="Needs">What it asks for.</param>
public sealed record WhyAsker(string Name, string Title, string Needs);

/// <summary>A joint.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Title">The joint in words.</param>
/// <param name="Verb">The verb that opens it.</param>
/// <param name="Covers">What covers or locks it.</param>
public sealed record WhyJoint(string Name, string Title, string Verb, ImmutableArray<WhyItem> Covers);

/// <summary>A line of the sources about an item.</summary>
/// <param name="Verb">The verb's word.</param>
/// <param name="Jobs">The jobs that do it.</param>
/// <param name="Path">The file.</param>
/// <param name="Line">The line, counted from 1.</param>
public sealed record WhyStep(string Verb, ImmutableArray<string> Jobs, string Path, int Line);
