using System.Globalization;
using ProcScript.Jobs.Standing;

namespace ProcScript.Cli.Jobs;

/// <summary>Tells in lines how a job stands.</summary>
internal static class JobText
{
    private const int MostBeforeClosing = 6;

    /// <summary>The lines.</summary>
    public static IEnumerable<string> Lines(JobStatus status)
    {
        yield return $"{status.Title}: {status.Machine}{Of(" ", status.Serial)}{Of(", order ", status.Order)}";
        yield return $"  {status.State}, {status.Done} of {status.Steps} steps done, cards of revision {status.Plan}{(status.LastAt is { } at ? $", last event {status.Events} on {At(at)}" : "")}";
        foreach (var line in Section("What is unsafe", status.Unsafe.Select(one => $"! {one}"))
            .Concat(Section("Closed over something open", status.Hidden.Select(one => $"! {one}")))
            .Concat(status.NeedsNewCards ? ["", "! The job has left its cards: 'procscript job refit' makes new ones from how the machine stands."] : [])
            .Concat(status.Unfollowed.Length > 0 ? ["", $"! {status.Unfollowed}."] : [])
            .Concat(Section("What is not as on the whole machine", status.Open.Select(one => $"{one.Title}: {one.State}{Of(", in ", one.Where)}")))
            .Concat(Section("Bags", status.Bags.Select(bag => $"{bag.Number}: {string.Join("; ", bag.Contents)}{Of(" · lies in ", bag.Where)}")))
            .Concat(Section("Pieces", status.Pieces))
            .Concat(Section("Fluids", status.Fluids.Select(fluid => $"{fluid.Title}: {Fluid(fluid)}")))
            .Concat(Section("May be done now", status.Next.Select(step => $"{step.Number}  {step.Text}{(step.NotBefore is { } from ? $" (not before {At(from)}: it cures)" : "")}")))
            .Concat(Section("Otherwise than planned", status.Deviations.SelectMany(one => new[] { $"{one.Event}  {At(one.At)} {one.By}: {one.Text}" }.Concat(one.Means.Select(meaning => $"  ! {meaning}")))))
            .Concat(status.Back is { } back ? Section("Way back", Back(back)) : []))
        {
            yield return line;
        }

        if (status.State != "closed")
        {
            foreach (var line in status.BeforeClosing.Length switch
            {
                0 => ["", "Nothing keeps it from being closed."],
                <= MostBeforeClosing => Section("Before it can be closed", status.BeforeClosing),
                var many => ["", $"{Verbs.Counted.Of(many, "thing")} keep it from being closed: 'procscript job close' lists them."],
            })
            {
                yield return line;
            }
        }
    }

    /// <summary>A point in time, as it was told.</summary>
    public static string At(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    private static IEnumerable<string> Back(StatusBack back)
    {
        yield return $"{Verbs.Counted.Of(back.Steps, "step")}, about {Math.Max(1, Math.Round(back.Seconds / 60)).ToString(CultureInfo.InvariantCulture)} min for one person"
            + (back.Again == 0 ? "" : $"; {Verbs.Counted.Of(back.Again, "step")} of it to open again what was closed too early");
        foreach (var step in back.First)
        {
            yield return $"  {step}";
        }

        if (back.Steps > back.First.Length)
        {
            yield return "  …";
        }
    }

    private static string Fluid(ProcScript.Jobs.Closing.FluidBalance fluid) =>
        $"nameplate {Or(fluid.Nameplate)}, out {Or(fluid.Recovered)}, in {Or(fluid.Charged)}. {fluid.Verdict}".TrimEnd();

    private static string Or(string text) => text.Length == 0 ? "not said" : text;

    private static string Of(string before, string text) => text.Length == 0 ? "" : before + text;

    private static IEnumerable<string> Section(string title, IEnumerable<string> lines)
    {
        var all = lines.ToList();
        return all.Count == 0 ? [] : new[] { "", title }.Concat(all.Select(line => $"  {line}"));
    }
}
