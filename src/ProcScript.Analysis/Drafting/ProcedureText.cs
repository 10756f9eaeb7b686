using System.Globalization;
using System.Text;
using ProcScript.Analysis.Actions;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Names;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;
using ProcScript.Model.Sources;
using ProcScript.Syntax;
using ProcScript.Syntax.Formatting;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Drafting;

/// <summary>Writes a procedure that was made up as a source.</summary>
internal static class ProcedureText
{
    /// <summary>The procedure by itself, laid out.</summary>
    public static string Write(Procedure procedure)
    {
        var text = new StringBuilder($"procedure {procedure.Name} {Quoted(procedure.Title)} on {procedure.Machine.Name}");
        text.Append(Options(procedure.Machine));
        text.Append(" {\n");
        foreach (var goal in procedure.Goals)
        {
            text.Append(CultureInfo.InvariantCulture, $"goal {Word(goal.Verb)} {Name(goal.Target)}\n");
        }

        foreach (var line in procedure.Details.Certificates.Select(one => $"certified {one.Name}\n")
            .Concat(procedure.Details.Ppe.Select(ppe => $"ppe {Quoted(ppe)}\n")).Concat(procedure.Alerts.Select(Alert)))
        {
            text.Append(line);
        }

        foreach (var stage in procedure.Stages)
        {
            text.Append(CultureInfo.InvariantCulture, $"stage {Quoted(stage.Title)} {{\n{string.Concat(stage.Steps.Select(Step))}}}\n");
        }

        if (!procedure.Work.IsEmpty)
        {
            text.Append(CultureInfo.InvariantCulture, $"work {{\n{string.Concat(procedure.Work.Select(Step))}}}\n");
        }

        var checks = procedure.Rules.OfType<CheckRule>().ToList();
        if (checks.Count > 0)
        {
            text.Append(CultureInfo.InvariantCulture, $"refit {{\n{string.Concat(checks.Select(Check))}}}\n");
        }

        text.Append("}\n");
        var tree = SyntaxTree.Parse(new SourceText(procedure.Name + ".proc", text.ToString()));
        return Formatter.Format(tree) ?? text.ToString();
    }

    /// <summary>A procedure as a file of its own, which uses what it names.</summary>
    /// <param name="path">The path of the file in the library.</param>
    /// <param name="uses">The paths of the files that it uses.</param>
    /// <param name="procedure">The procedure by itself.</param>
    public static string File(string path, IEnumerable<string> uses, string procedure) =>
        $"{string.Concat(uses.Select(used => $"use {Quoted(LibraryPath.Relative(path, used))}\n"))}\n{procedure}";

    private static string Options(Machine machine)
    {
        // A job for this variant: what it names may not be there in others.
        var without = machine.Options.Except(machine.With).Select(option => option.Name).ToList();
        return (machine.With.IsEmpty ? "" : $" with {string.Join(", ", machine.With.Select(option => option.Name))}")
            + (without.Count == 0 ? "" : $" without {string.Join(", ", without)}");
    }

    private static string Step(Step step)
    {
        var position = step.Target is Control control ? $" to {control.Positions[step.Position]}" : "";
        var count = step.Count is { } pieces ? $"{pieces.ToString(CultureInfo.InvariantCulture)} of " : "";
        var text = step.Text is { } said ? $" {Quoted(said)}" : "";
        return $"{Word(step.Verb)}{(step.Target is null ? "" : $" {count}{Name(step.Target)}")}{position}{text}{Block(step.Details)}\n";
    }

    private static string Check(CheckRule rule)
    {
        var needs = string.Join(", ", rule.Conditions.Select(condition => $"{Name(condition.Item)} {(condition.State == NeededState.Full ? "full" : "live")}"));
        var tools = rule.Details.Tools.IsEmpty ? "" : $" with {string.Join(", ", rule.Details.Tools.Select(tool => tool.Name))}";
        var place = rule.Before is { } before ? $" before {Word(before.Verb)} {Name(before.Target)}" : rule.After is { } after ? $" after {Word(after.Verb)} {Name(after.Target)}" : "";
        return $"{string.Concat(rule.Alerts.Select(Alert))}check {Quoted(rule.Text)}{tools}{(rule.Expect is { } limit ? $" expect {Figure(limit.Print())}" : "")}{place}{(needs.Length > 0 ? $" needs {needs}" : "")}{Block(rule.Details with { Tools = [] })}\n";
    }

    private static string Block(ActionDetails details)
    {
        var lines = Lines(details).ToList();
        return lines.Count == 0 ? "" : $" {{\n{string.Join('\n', lines)}\n}}";
    }

    private static IEnumerable<string> Lines(ActionDetails details)
    {
        foreach (var alert in details.Alerts)
        {
            yield return Alert(alert).TrimEnd();
        }

        foreach (var (word, texts) in new[] { ("how", details.How), ("photo", details.Photos), ("check", details.Checks), ("ppe", details.Ppe) })
        {
            foreach (var text in texts)
            {
                yield return $"{word} {Quoted(text)}";
            }
        }

        IEnumerable<string?> lines =
        [
            details.Tools.IsEmpty ? null : $"tool {string.Join(", ", details.Tools.Select(tool => tool.Name))}",
            details.People > 0 ? $"people {details.People.ToString(CultureInfo.InvariantCulture)}" : null,
            details.Hoist ? "hoist" : null,
            details.Certificates.IsEmpty ? null : $"certified {string.Join(", ", details.Certificates.Select(one => one.Name))}",
            details.In is { } place ? $"in {place.Name}" : null,
            details.Time is { } time ? $"time {Figure(time.Print())}" : null,
            details.Store is { } store ? $"store {Quoted(store)}" : null,
            details.Torque is { } torque ? $"torque {Torque(torque)}" : null,
            details.Pattern is { } pattern ? $"pattern {Pattern(pattern)}" : null,
            details.Bag is { } bag ? $"bag {Quoted(bag)}" : null,
            details.Signed ? "signed" : null,
            details.Lift.Reach is { } reach ? $"reach {Figure(reach.Print())}" : null,
            details.Lift.Height is { } height ? $"height {Figure(height.Print())}" : null,
            details.Lift.Twist is { } twist ? $"twist {Figure(twist.Print())}" : null,
            details.Lift.Frequency is { } frequency ? $"frequency {Figure(frequency.Print())}" : null,
            details.Lift.Grip is { } grip ? $"grip {grip.ToString().ToLowerInvariant()}" : null,
            .. details.Uses.Select(use => use.IsSeal ? $"seals {Amount(use)} {use.Supply.Name}" : $"uses {Used(use)}"),
            details.Refit is { } refit && Lines(refit).Any() ? $"refit{Block(refit)}" : null,
        ];
        foreach (var line in lines.OfType<string>())
        {
            yield return line;
        }
    }

    private static string Alert(Alert alert) => $"{Phase(alert.Phase)}{alert.Word.ToString().ToLowerInvariant()} {Quoted(alert.Text)}\n";

    private static string Used(SupplyUse use) => use.Amount.Unit.Dimension == Dimension.Count ? $"{Amount(use)} {use.Supply.Name}" : $"{Amount(use)} of {use.Supply.Name}";

    private static string Amount(SupplyUse use) => Figure(use.Amount.Print());

    private static string Pattern(TighteningPattern pattern) => pattern switch
    {
        TighteningPattern.InsideOut => "inside out",
        _ => pattern.ToString().ToLowerInvariant(),
    };

    private static string Phase(NeedsPhase phase) => phase switch
    {
        NeedsPhase.Strip => "strip ",
        NeedsPhase.Refit => "refit ",
        _ => "",
    };

    /// <summary>A figure as sources have it: blanks that do not break are plain ones there.</summary>
    private static string Figure(string printed) => printed.Replace('\u00A0', ' ').Replace('\u202F', ' ').Replace(" to ", " .. ", StringComparison.Ordinal);

    /// <summary>The stages with one unit for all, then the angles.</summary>
    private static string Torque(TighteningTorque torque)
    {
        var unit = torque.Final.Unit;
        var stages = torque.Stages.Select(stage => Figure((stage with { Unit = unit }).Print())).ToList();
        var bare = stages.SkipLast(1).Select(stage => stage.EndsWith(unit.Symbol, StringComparison.Ordinal) ? stage[..^unit.Symbol.Length].TrimEnd() : stage);
        return string.Join(", ", bare.Append(stages[^1])) + string.Concat(torque.Angles.Select(angle => $" + {Figure(angle.Print())}"));
    }

    private static string Name(MachineItem item) => CanonicalName.Written(item.Name);

    private static string Word(Verb verb) => ActionTable.Row(verb).Word;

    private static string Quoted(string text) => DraftWords.Quoted(text);
}
