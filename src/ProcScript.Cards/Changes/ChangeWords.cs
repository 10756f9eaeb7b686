using System.Collections.Immutable;
using System.Globalization;
using ProcScript.Analysis.Comparing;
using ProcScript.Cards.Words;

namespace ProcScript.Cards.Changes;

/// <summary>Says a change in shop words, line by line.</summary>
internal static class ChangeWords
{
    /// <summary>The lines.</summary>
    public static IEnumerable<ChangeLine> Of(LibraryChange change) =>
    [
        .. Jobs("No longer proven: no pack can be made", "!", change.NoLongerProven),
        .. Jobs("Jobs added", "+", change.Added),
        .. Jobs("Jobs dropped: their packs are void", "-", change.Dropped),
        .. Jobs("Proven now", "+", change.NowProven),
        .. Jobs("Not compared, since proven neither before nor now", "", change.NotCompared),
        .. change.Changed.SelectMany(Job),
        new ChangeLine(0, "", Summary(change)),
    ];

    private static IEnumerable<ChangeLine> Jobs(string heading, string mark, ImmutableArray<JobName> jobs) =>
        jobs.IsEmpty ? [] : [new ChangeLine(0, "", heading), .. jobs.Select(job => new ChangeLine(2, mark, Name(job)))];

    private static IEnumerable<ChangeLine> Job(JobChange job) =>
    [
        new ChangeLine(0, "", $"{Name(job.Name)}: revision {job.OldRevision} → {job.NewRevision}"),
        .. Group("Safety", job.Safety.Select(Safety)),
        .. Group("Alerts", job.Alerts.Select(Alert)),
        .. Group("Cover", [.. job.Cover.Select(value => new ChangeLine(2, "~", Value(value))), .. Times(job.Times)]),
        .. Group("Strip", job.Steps.Where(step => step.Phase == "strip").SelectMany(Step)),
        .. Group("Work", job.Steps.Where(step => step.Phase == "work").SelectMany(Step)),
        .. Group("Refit", job.Steps.Where(step => step.Phase == "refit").SelectMany(Step)),
        .. Group("Lists", job.Lists.Select(List)),
        .. Group($"Void on paper of revision {job.OldRevision}", Void(job)),
    ];

    private static IEnumerable<ChangeLine> Group(string heading, IEnumerable<ChangeLine> lines)
    {
        var all = lines.ToList();
        return all.Count == 0 ? [] : all.Prepend(new ChangeLine(1, "", heading));
    }

    private static ChangeLine Alert(AlertChange alert)
    {
        var step = alert.NewStep > 0 ? alert.NewStep : alert.OldStep;
        var where = step == 0 ? "for the whole job" : string.Create(CultureInfo.InvariantCulture, $"{(alert.NewStep > 0 ? "before" : "before old")} step {step}");
        return alert.Kind switch
        {
            "added" => new ChangeLine(2, "+", $"{alert.NewWord} {where}: {OnOneLine(alert.NewText)}"),
            "removed" => new ChangeLine(2, "!", $"gone, though its step is not: {alert.OldWord} {where}: {OnOneLine(alert.OldText)}"),
            "gone with its step" => new ChangeLine(2, "-", $"{alert.OldWord} {where}, with the step: {OnOneLine(alert.OldText)}"),
            "weakened" => new ChangeLine(2, "!", $"weaker, {alert.OldWord} → {alert.NewWord} {where}: {Texts(alert)}"),
            "strengthened" => new ChangeLine(2, "~", $"stronger, {alert.OldWord} → {alert.NewWord} {where}: {Texts(alert)}"),
            _ => new ChangeLine(2, "~", $"{alert.NewWord} {where}: {Texts(alert)}"),
        };
    }

    private static ChangeLine Safety(SafetyChange change) => new(
        2,
        "!",
        change.Kind == "gone"
            ? $"gone, though what it was for is still done: {change.Title}, {change.Measure}: {OnOneLine(change.Old)}"
            : $"weaker: {change.Title}, {change.Measure}: {OnOneLine(change.Old)} → {OnOneLine(change.New)}");

    private static string Texts(AlertChange alert) =>
        alert.OldText == alert.NewText ? OnOneLine(alert.NewText) : $"{OnOneLine(alert.OldText)} → {OnOneLine(alert.NewText)}";

    private static IEnumerable<ChangeLine> Times(TimeChange times)
    {
        // What is told the same is the same to whoever plans the day.
        var before = (Durations.InWords(times.OldOnePerson), Durations.InWords(times.OldCrew));
        var after = (Durations.InWords(times.NewOnePerson), Durations.InWords(times.NewCrew));
        string[] told =
        [
            .. before.Item1 != after.Item1 ? [$"{before.Item1} → {after.Item1} one step after the other"] : Array.Empty<string>(),
            .. before.Item2 != after.Item2 ? [$"{before.Item2} → {after.Item2} with a crew"] : Array.Empty<string>(),
        ];
        if (told.Length > 0)
        {
            yield return new ChangeLine(2, "~", $"time: {string.Join(", ", told)}");
        }
    }

    private static IEnumerable<ChangeLine> Step(StepChange step)
    {
        yield return step.Kind switch
        {
            "added" => new ChangeLine(2, "+", string.Create(CultureInfo.InvariantCulture, $"step {step.NewStep}, {step.NewCard}: {OnOneLine(step.Text)}")),
            "dropped" => new ChangeLine(2, "-", string.Create(CultureInfo.InvariantCulture, $"old step {step.OldStep}, {step.OldCard}: {OnOneLine(step.Text)}")),
            "moved" => new ChangeLine(2, ">", string.Create(CultureInfo.InvariantCulture, $"old step {step.OldStep}, {step.OldCard} → step {step.NewStep}, {step.NewCard}: {OnOneLine(step.Text)}")),
            _ => new ChangeLine(2, "~", string.Create(CultureInfo.InvariantCulture, $"step {step.NewStep}, {step.NewCard}: {OnOneLine(step.Text)}")),
        };
        foreach (var value in step.Values)
        {
            yield return new ChangeLine(3, "", Value(value));
        }
    }

    private static ChangeLine List(ListChange line) => line.Kind switch
    {
        "added" => new ChangeLine(2, "+", $"{line.List}: {line.Title}{(line.New.Length > 0 ? $", {OnOneLine(line.New)}" : "")}"),
        "dropped" => new ChangeLine(2, "-", $"{line.List}: {line.Title}{(line.Old.Length > 0 ? $", {OnOneLine(line.Old)}" : "")}"),
        _ => new ChangeLine(2, "~", $"{line.List}: {line.Title}, {Between(line.Old, line.New)}"),
    };

    private static IEnumerable<ChangeLine> Void(JobChange job) =>
        job.Void.Select(paper => new ChangeLine(2, "", paper.OnlyNumbers ? $"{paper.Paper} (only numbers)" : paper.Paper));

    private static string Value(ValueChange value) => (value.Old.Length, value.New.Length) switch
    {
        (0, _) => $"{value.What}: {OnOneLine(value.New)} (none before)",
        (_, 0) => $"{value.What}: none (was {OnOneLine(value.Old)})",
        _ => $"{value.What}: {Between(value.Old, value.New)}",
    };

    /// <summary>Of what is said in several lines only those that are not said on both sides.</summary>
    private static string Between(string old, string fresh)
    {
        var (before, after) = (old.Split('\n'), fresh.Split('\n'));
        var (gone, come) = (string.Join(" / ", before.Except(after)), string.Join(" / ", after.Except(before)));
        return (gone.Length, come.Length) switch
        {
            (0, 0) => "in another order",
            (0, _) => $"also {come}",
            (_, 0) => $"no longer {gone}",
            _ => $"{gone} → {come}",
        };
    }

    private static string Name(JobName job) => $"{job.Job} on {job.Machine}{string.Concat(job.With.Select(option => $" with {option}"))}, {OnOneLine(job.Title)}";

    private static string Summary(LibraryChange change)
    {
        var papers = change.Changed.Sum(job => job.Void.Length);
        var losses = change.Changed.Sum(job => job.Alerts.Count(alert => alert.IsLoss));
        string[] parts =
        [
            .. Counted(change.Added.Length, "job added", "jobs added"),
            .. Counted(change.Dropped.Length, "job dropped", "jobs dropped"),
            .. Counted(change.NoLongerProven.Length, "job no longer proven", "jobs no longer proven"),
            .. Counted(change.Changed.Length, "pack says otherwise", "packs say otherwise"),
            .. Counted(papers, "printed page or label is void", "printed pages and labels are void"),
            .. Counted(change.Changed.Sum(job => job.Safety.Length), "precaution is gone or weaker", "precautions are gone or weaker"),
            .. Counted(losses, "alert is gone or weaker", "alerts are gone or weaker"),
        ];
        return parts.Length == 0 ? "No pack says otherwise." : $"{string.Join(", ", parts)}.";
    }

    private static IEnumerable<string> Counted(int count, string one, string many) =>
        count == 0 ? [] : [string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : many)}")];

    private static string OnOneLine(string text) => text.ReplaceLineEndings(" / ");
}
