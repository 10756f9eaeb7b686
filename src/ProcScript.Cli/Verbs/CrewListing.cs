using System.Collections.Immutable;
using System.Globalization;
using ProcScript.Analysis.Crews;
using ProcScript.Cli.Output;

namespace ProcScript.Cli.Verbs;

/// <summary>Who does what when, for people at a terminal.</summary>
internal static class CrewListing
{
    private const double Minute = 60;
    private const double Hour = 3600;

    /// <summary>Prints it.</summary>
    public static void Print(ImmutableArray<CrewPlan> jobs, Terminal terminal)
    {
        foreach (var (at, plan) in jobs.Index())
        {
            if (at > 0)
            {
                terminal.WriteLine();
            }

            Print(plan, terminal);
        }
    }

    private static void Print(CrewPlan plan, Terminal terminal)
    {
        terminal.WriteLine(new Piece($"{plan.Job}: {PrintableText.Of(plan.Title)}", Ink.Strong), new Piece($", {PrintableText.Of(plan.MachineTitle)}"));
        foreach (var total in plan.Totals)
        {
            terminal.WriteLine(new Piece($"  {People(total.People),-10} {Clock(total.Seconds),8}  {(total.People == 1 ? "in the order of the cards" : Saving(plan.OnePerson - total.Seconds, plan.OnePerson))}"));
        }

        terminal.WriteLine(new Piece($"  {Shortest(plan)}"));
        terminal.WriteLine(new Piece($"  the longest chain, which no number of people shortens: {Clock(plan.CriticalPath.Seconds)}, steps {Numbers(plan.CriticalPath.Steps)}"));
        foreach (var held in plan.Certificates)
        {
            var what = held.Name.Length == 0 ? "certified for restraint, high voltage or refrigerant" : $"{PrintableText.Of(held.Title)} ({held.Name})";
            terminal.WriteLine(new Piece($"  {what}: {(held.People.IsEmpty ? "nobody" : string.Join(", ", held.People))}; asked for at {Steps(held.Steps)}"));
        }

        foreach (var place in plan.Places)
        {
            terminal.WriteLine(new Piece($"  {PrintableText.Of(place.Title)}: room for {People(place.Room)}, {Steps(place.Steps)}"));
        }

        if (!plan.Uncertified.IsEmpty)
        {
            terminal.WriteLine(new Piece($"  nobody who is there may do {Steps(plan.Uncertified)}: call somebody who holds what they ask for"));
        }

        if (!plan.NeedHelp.IsEmpty)
        {
            terminal.WriteLine(new Piece($"  more people than these are needed at {Steps(plan.NeedHelp)}: call somebody before you begin there"));
        }

        terminal.WriteLine();
        var names = Math.Max(3, plan.Steps.Select(step => Who(step.People).Length).DefaultIfEmpty(0).Max());
        foreach (var step in plan.Steps)
        {
            var waits = plan.People.Length == 1 || step.WaitsFor.IsEmpty ? "" : $"  wait for {string.Join(", ", step.WaitsFor.Select(wait => $"{wait.Step} ({Who(wait.People)})"))}";
            terminal.WriteLine(
                new Piece($"  {Clock(step.Start),8}  "),
                new Piece(Who(step.People).PadRight(names), Ink.Strong),
                new Piece(string.Create(CultureInfo.InvariantCulture, $"  {step.Step,3}. {PrintableText.Of(step.Text)}{(step.StandClear ? "  (all others stand clear)" : "")}{waits}")));
        }

        terminal.WriteLine(new Piece($"  {Clock(plan.Seconds),8}  done"));
        Lists(plan, terminal);
    }

    private static void Lists(CrewPlan plan, Terminal terminal)
    {
        if (!plan.SideBySide.IsEmpty)
        {
            terminal.WriteLine();
            terminal.WriteLine(new Piece("  side by side"));
            foreach (var one in plan.SideBySide)
            {
                terminal.WriteLine(new Piece($"  {Clock(one.Start),8} to {Clock(one.End)}: {string.Join(", ", one.People.Select(share => $"{share.Name} {Numbers(share.Steps)}"))}"));
            }
        }

        if (!plan.ToolsAtOnce.IsEmpty)
        {
            terminal.WriteLine();
            terminal.WriteLine(new Piece("  wanted by two at once: have two of each, or hand it over"));
            foreach (var tool in plan.ToolsAtOnce)
            {
                terminal.WriteLine(new Piece($"    {PrintableText.Of(tool.Title)}, {Steps(tool.Steps)}"));
            }
        }
    }

    private static string Shortest(CrewPlan plan) =>
        plan.People.Length == 1 ? "alone, the order of the cards is the one to keep"
        : plan.IsShortest ? $"proved: no order is quicker with {People(plan.People.Length)}"
        : string.Create(CultureInfo.InvariantCulture, $"not proved to be the quickest: no order takes less than {Clock(plan.Least)}, so that {Clock(plan.Seconds - plan.Least)} ({(plan.Seconds - plan.Least) / plan.Seconds:P0}) might be saved at the most");

    private static string Saving(double saved, double of) => saved <= 0
        ? "saves nothing"
        : string.Create(CultureInfo.InvariantCulture, $"saves {Clock(saved)} ({saved / of:P0})");

    private static string Who(ImmutableArray<string> people) => people.IsEmpty ? "-" : string.Join('+', people);

    private static string People(int count) => count == 1 ? "1 person" : string.Create(CultureInfo.InvariantCulture, $"{count} people");

    private static string Steps(ImmutableArray<int> steps) => $"{(steps.Length == 1 ? "step" : "steps")} {Numbers(steps)}";

    /// <summary>Steps in the order given, what follows on each other as a stretch.</summary>
    private static string Numbers(ImmutableArray<int> steps)
    {
        var stretches = new List<(int First, int Last)>();
        foreach (var step in steps)
        {
            if (stretches.Count > 0 && stretches[^1].Last == step - 1)
            {
                stretches[^1] = (stretches[^1].First, step);
            }
            else
            {
                stretches.Add((step, step));
            }
        }

        return string.Join(", ", stretches.Select(one => one.First == one.Last
            ? string.Create(CultureInfo.InvariantCulture, $"{one.First}")
            : string.Create(CultureInfo.InvariantCulture, $"{one.First}{(one.Last == one.First + 1 ? ", " : "-")}{one.Last}")));
    }

    /// <summary>Such as <c>4:30</c> and <c>1:04:30</c>, to the second.</summary>
    private static string Clock(double seconds)
    {
        var whole = Math.Round(seconds);
        return whole < Hour
            ? string.Create(CultureInfo.InvariantCulture, $"{(int)(whole / Minute)}:{whole % Minute:00}")
            : string.Create(CultureInfo.InvariantCulture, $"{(int)(whole / Hour)}:{(int)(whole % Hour / Minute):00}:{whole % Minute:00}");
    }
}
