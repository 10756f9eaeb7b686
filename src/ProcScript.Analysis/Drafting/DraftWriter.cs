using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Drafting;

/// <summary>Writes drafted items as text. Layout is the formatter's business; each question stands at the end of its line, or on one of its own.</summary>
internal static class DraftWriter
{
    /// <summary>What belongs in the block of the machine itself: energies, fluids, controls, then parts with their joints.</summary>
    public static string Machine(DraftedMachine machine)
    {
        var text = new StringBuilder();
        foreach (var item in machine.Items.Where(item => item.Sort is ItemSort.Energy or ItemSort.Fluid or ItemSort.Control).OrderBy(item => item.Sort))
        {
            Service(text, item);
        }

        Parts(text, machine, owner: "");

        return text.ToString();
    }

    private static void Parts(StringBuilder text, DraftedMachine machine, string owner)
    {
        foreach (var part in machine.Items.Where(item => item.Sort == ItemSort.Part && item.Owner == owner))
        {
            Part(text, part, machine);
        }
    }

    /// <summary>The joints that belong into a part which the machine has, once each; empty where there are none.</summary>
    public static string Joints(DraftedMachine machine, PartSyntax part)
    {
        var text = new StringBuilder();
        var joints = machine.Items.Where(item => item is { IsJoint: true, Covers: "" } && machine.Declared.Part(item.Owner) == part);
        foreach (var joint in joints.DistinctBy(joint => joint.Name))
        {
            Joint(text, joint, machine);
        }

        return text.ToString();
    }

    /// <summary>A question as it stands in a text.</summary>
    public static string Question(string question) => $"// {DraftQuestions.Mark} {question}";

    private static void Service(StringBuilder text, DraftedItem item)
    {
        switch (item.Sort)
        {
            case ItemSort.Energy:
                Begin(text, "energy", item);
                Usual(text, item, "isolate", $"Isolate the {item.Title}.");
                Usual(text, item, "restore", $"Restore the {item.Title}.");
                break;
            case ItemSort.Fluid:
                Begin(text, "fluid", item);
                Usual(text, item, "empty", $"Drain the {item.Title}.");
                Usual(text, item, "fill", $"Fill in the {item.Title}.");
                break;
            default:
                Begin(text, "control", item);
                text.Append(string.Join(", ", Positions(item))).Append('\n');
                break;
        }

        text.Append("}\n");
    }

    /// <summary>What has to be said, where nothing is known that says it better.</summary>
    private static void Usual(StringBuilder text, DraftedItem item, string property, string words)
    {
        if (!item.Facts.Properties.Any(known => known.StartsWith(property + " ", StringComparison.Ordinal)))
        {
            text.Append(CultureInfo.InvariantCulture, $"{property} {DraftWords.Quoted(words)}\n");
        }
    }

    /// <summary>A control has a home and somewhere else to go; steps may name one of them only.</summary>
    private static IEnumerable<string> Positions(DraftedItem control)
    {
        var named = control.Positions.Count == 1 ? ["home", .. control.Positions] : control.Positions;
        return named.Count == 0 ? ["home", "other"] : named is ["home", "home"] ? ["home", "other"] : named;
    }

    private static void Part(StringBuilder text, DraftedItem part, DraftedMachine machine)
    {
        List<DraftedItem> joints = [.. machine.Items.Where(item => item is { IsJoint: true, Covers: "" } && item.Owner == part.Name)];
        var isWhole = !machine.Items.Any(item => item.Sort == ItemSort.Part && item.Owner == part.Name) && !part.Facts.Properties.Any(IsComment);
        // A part of which nothing is asked and little is known stands on one line, as people write it.
        if (isWhole && part is { Questions: [], Guesses: [], IsTemporary: false, GoesAside: false } && joints is [] or [{ Questions: [], Guesses: [], Remarks: [] }] && !machine.Items.Any(item => item.Covers.Length > 0 && item.Owner == part.Name))
        {
            var members = new StringBuilder();
            foreach (var joint in joints)
            {
                Joint(members, joint, machine);
            }

            var inside = string.Join("  ", part.Facts.Properties.Append(members.ToString().Trim()).Where(one => one.Length > 0));
            text.Append(text.Length > 0 && text[^2] == '}' && text.ToString().TrimEnd().EndsWith("\n}", StringComparison.Ordinal) ? "\n" : "");
            text.Append(CultureInfo.InvariantCulture, $"part {part.Name} {DraftWords.Quoted(part.Title)}{(inside.Length == 0 ? "" : $" {{ {inside} }}")}\n");
            return;
        }

        Begin(text, "part", part);
        if (part.IsTemporary)
        {
            text.Append("temporary\n");
        }

        Guesses(text, part);
        foreach (var joint in joints)
        {
            Joint(text, joint, machine);
        }

        if (part.GoesAside)
        {
            text.Append(part.Facts.Properties.FirstOrDefault(IsAside) ?? $"aside {DraftWords.Quoted($"Move the {part.Title} aside.")}");
            text.Append(part.AsideNeeds.Count > 0 ? $" needs {string.Join(", ", part.AsideNeeds)}\n" : "\n");
        }

        Parts(text, machine, part.Name);

        text.Append("}\n");
    }

    private static void Begin(StringBuilder text, string keyword, DraftedItem item)
    {
        text.Append(CultureInfo.InvariantCulture, $"\n{keyword} {item.Name} {DraftWords.Quoted(item.Title)} {{\n");
        foreach (var question in item.Questions)
        {
            text.Append(Question(question)).Append('\n');
        }

        foreach (var property in item.Facts.Properties.Where(property => !IsAside(property)))
        {
            text.Append(property).Append('\n');
        }
    }

    private static bool IsAside(string property) => property.StartsWith("aside ", StringComparison.Ordinal);

    private static void Guesses(StringBuilder text, DraftedItem item)
    {
        foreach (var (clause, question) in item.Guesses)
        {
            text.Append(clause).Append(question.Length > 0 ? $"  {Question(question)}\n" : "\n");
        }
    }

    private static bool IsComment(string property) => property.StartsWith("//", StringComparison.Ordinal);

    private static void Joint(StringBuilder text, DraftedItem joint, DraftedMachine machine)
    {
        List<DraftedItem> covers = [.. machine.Items.Where(item => item.Covers == joint.Name)];
        foreach (var comment in joint.Remarks.Select(remark => "// " + remark).Concat(joint.Questions.Select(Question)))
        {
            text.Append(comment).Append('\n');
        }

        text.Append(CultureInfo.InvariantCulture, $"{ItemSorts.Sentence(joint.Sort)} {Math.Max(1, joint.Count)} {joint.Kind} as {joint.Name}");
        var block = joint.Facts.Properties;
        if (covers.Count == 0 && block.IsEmpty && joint.Guesses is [var (clause, asked)] && !clause.StartsWith("behind ", StringComparison.Ordinal))
        {
            text.Append(CultureInfo.InvariantCulture, $" {clause}  {Question(asked)}\n");
            return;
        }

        if (covers.Count == 0 && block.IsEmpty && joint.Guesses.Count == 0)
        {
            text.Append('\n');
            return;
        }

        var isLong = joint.Guesses.Count + covers.Count > 0;
        text.Append(" {").Append(isLong ? "\n" : " ").Append(string.Join("  ", block)).Append(isLong ? "\n" : " ");
        Guesses(text, joint);
        foreach (var cover in covers)
        {
            Cover(text, cover, joint);
        }

        text.Append("}\n");
    }

    private static void Cover(StringBuilder text, DraftedItem cover, DraftedItem joint)
    {
        foreach (var question in cover.Questions)
        {
            text.Append(Question(question)).Append('\n');
        }

        // What locks a plug slides back; what locks a nut is bent over, and new each time.
        ImmutableArray<string> block = cover.IsLock && joint.Sort != ItemSort.Fastener
            ? [.. cover.Facts.Properties, "reuse because \"It stays on, and slides back.\""]
            : cover.Facts.Properties;
        text.Append(CultureInfo.InvariantCulture, $"{(cover.IsLock ? "locked" : "covered")} by {Math.Max(1, cover.Count)} {cover.Kind} as {cover.Name}");
        text.Append(block.IsEmpty ? "" : $" {{ {string.Join("  ", block)} }}").Append(CultureInfo.InvariantCulture, $"  {Question(JointCovers.Question(cover, joint))}\n");
    }
}
