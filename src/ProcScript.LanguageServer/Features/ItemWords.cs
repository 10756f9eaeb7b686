using System.Text;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;

namespace ProcScript.LanguageServer.Features;

/// <summary>Items of machines and kinds of the catalog in Markdown: what they are, what holds them, what hides them.</summary>
internal static class ItemWords
{
    /// <summary>An item; with a moment also what it is like then.</summary>
    public static string Tell(MachineItem item, MachineMoment? moment)
    {
        var text = new StringBuilder($"{Sort(item)} `{item.Name}`: **{item.Title}**");
        if (moment is not null)
        {
            Paragraph(text, $"Before this step: {moment.Words(item)}");
            var missing = moment.Missing(MachineMoment.Opening(item), item);
            if (!missing.IsEmpty && item is not Control)
            {
                Paragraph(text, $"Not yet within reach: {string.Join("; ", missing)}");
            }
        }

        switch (item)
        {
            case Joint joint:
                Paragraph(text, $"{joint.Count} × {joint.Kind.Title} (`{joint.Kind.Name}`) on `{joint.Owner.Name}`" + (joint.Other is { } other ? $", to `{other.Name}`" : ""));
                Paragraph(text, joint.At is { } place ? $"At: {place}" : "");
                Paragraph(text, joint.Torque is { } torque ? $"Torque: {torque.Print()}" : "");
                Paragraph(text, Names("Covered by", joint.Covers.Where(cover => !cover.IsLock)));
                Paragraph(text, Names("Locked by", joint.Covers.Where(cover => cover.IsLock)));
                Paragraph(text, joint.SingleUse ? "New ones go back" : "");
                Paragraph(text, Names("On", joint.On is { } live ? [live] : []));
                Paragraph(text, Names("Carries", joint.Carries is { } fluid ? [fluid] : []));
                break;
            case Part part:
                Paragraph(text, part.Mass is { } mass ? $"Mass: {mass.Print()}" : "");
                Paragraph(text, Names("Held by", part.Joints.Where(joint => joint.Role != JointRole.Cover)));
                Paragraph(text, Names("Inside it", part.Children));
                break;
            case Energy energy:
                Paragraph(text, energy.Voltage is { } voltage ? $"Voltage: {voltage.Print()}{Current(energy.Current)}" : "");
                Paragraph(text, energy.Isolate is { } isolate ? $"Isolate: {isolate}" : "");
                Paragraph(text, energy.Wait is { } wait ? $"Wait: {wait.Print()}" : "");
                Paragraph(text, energy.Verify is { } verify ? $"Verify: {verify}{(energy.VerifyExpect is { } limit ? $" ({limit.Print()})" : "")}" : "");
                Paragraph(text, energy.VerifyAt is { Words: { Length: > 0 } words } ? $"Verify at: {words}" : "");
                break;
            case Fluid { Charge: { } charge }:
                Paragraph(text, $"Charge: {charge.Print()}");
                break;
            case Control control:
                Paragraph(text, $"Positions: {string.Join(", ", control.Positions.Select(position => $"`{position}`"))}; home is the first");
                break;
        }

        Paragraph(text, item.In is { } stands && stands != Workplace.None ? $"In: {stands.Title}, room for {stands.Room}" : "");
        Paragraph(text, item.Certificates.IsEmpty ? "" : $"Certified: {string.Join(", ", item.Certificates.Select(one => one.Title))}");
        Paragraph(text, Hidden("Hidden behind", item.Conditions));
        Paragraph(text, item is Part { WayOut: var way } ? Hidden("Its own way out is behind", way) : "");
        return text.ToString();
    }

    /// <summary>A place.</summary>
    public static string Tell(Workplace place) => $"place `{place.Name}`: **{place.Title}**\n\nRoom for {place.Room} {(place.Room == 1 ? "person" : "people")} at once";

    /// <summary>A kind.</summary>
    public static string Tell(Kind kind)
    {
        var text = new StringBuilder($"{kind.Category.ToString().ToLowerInvariant()} `{kind.Name}`: **{kind.Title}**");
        Paragraph(text, kind.Torque is { } torque ? $"Torque: {torque.Print()}" : "");
        Paragraph(text, kind.Certificates.IsEmpty ? "" : $"Certified: {string.Join(", ", kind.Certificates.Select(one => one.Title))}");
        Paragraph(text, kind.Drive is { } drive ? $"Drive: {drive.Title}" : "");
        Paragraph(text, kind.Release is { } release ? $"Off: {release}" : "");
        Paragraph(text, kind.Engage is { } engage ? $"On: {engage}" : "");
        return text.ToString();
    }

    /// <summary>What sort of thing an item is.</summary>
    public static string Sort(MachineItem item) => item switch
    {
        Joint { IsLock: true } => "lock",
        Joint { Role: JointRole.Cover } => "cover",
        Joint joint => joint.Kind.Category.ToString().ToLowerInvariant(),
        _ => item.GetType().Name.ToLowerInvariant(),
    };

    private static string Current(CurrentKind current) => current switch
    {
        CurrentKind.Alternating => " ac",
        CurrentKind.Direct => " dc",
        _ => "",
    };

    /// <summary>The parts that are in front; of a choice, any one of which has to go.</summary>
    private static string Hidden(string head, IEnumerable<Condition> conditions)
    {
        var hiders = string.Join(", ", conditions
            .Where(condition => condition.Each.All(way => way.State == NeededState.OutOfTheWay))
            .Select(condition => string.Join(" or ", condition.Each.Select(way => $"`{way.Item.Name}`"))));
        return hiders.Length > 0 ? $"{head}: {hiders}" : "";
    }

    private static string Names(string head, IEnumerable<MachineItem> items)
    {
        var names = string.Join(", ", items.Select(item => $"`{item.Name}`"));
        return names.Length > 0 ? $"{head}: {names}" : "";
    }

    private static void Paragraph(StringBuilder text, string line)
    {
        if (line.Length > 0)
        {
            text.Append("\n\n").Append(line);
        }
    }
}
