using System.Collections.Immutable;
using System.Globalization;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Rules.Comparing;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Comparing;

/// <summary>Compares two states of a library by what their work packs say.</summary>
public static class LibraryComparison
{
    private const string Format = "1";

    /// <summary>What is otherwise in the new state. A job is the same job if it has the same name, arguments, machine and options.</summary>
    /// <param name="before">What came of the procedures of the old state.</param>
    /// <param name="after">What came of those of the new one.</param>
    /// <param name="papers">Tells what of the paper of one plan is void once there is the other: only the cards know what is printed.</param>
    public static LibraryChange Of(
        IReadOnlyCollection<ProcedureReport> before, IReadOnlyCollection<ProcedureReport> after, Func<Plan, Plan, ImmutableArray<VoidPaper>> papers)
    {
        var was = ByName(before);
        var now = ByName(after);
        var both = was.Keys.Where(now.ContainsKey).Order(StringComparer.Ordinal).Select(name => (Old: was[name], New: now[name])).ToList();
        return new LibraryChange
        {
            Format = Format,
            Added = [.. Only(now, was)],
            Dropped = [.. Only(was, now)],
            NowProven = [.. both.Where(job => !job.Old.IsProven && job.New.IsProven).Select(job => NameOf(job.New))],
            NoLongerProven = [.. both.Where(job => job.Old.IsProven && !job.New.IsProven).Select(job => NameOf(job.New))],
            NotCompared = [.. both.Where(job => !job.Old.IsProven && !job.New.IsProven).Select(job => NameOf(job.New))],
            Changed =
            [
                .. both.Where(job => job.Old.IsProven && job.New.IsProven)
                    .Select(job => Of(NameOf(job.New), job.Old, job.New, papers))
                    .OfType<JobChange>(),
            ],
        };
    }

    /// <summary>The alerts that warn less than before of what is still done, and the precautions that are lost, as findings in the new state.</summary>
    /// <param name="change">What is otherwise.</param>
    /// <param name="after">What came of the procedures of the new state.</param>
    public static ImmutableArray<Finding> Losses(LibraryChange change, IReadOnlyCollection<ProcedureReport> after)
    {
        ArgumentNullException.ThrowIfNull(change);
        var procedures = after.ToLookup(report => KeyOf(NameOf(report)), StringComparer.Ordinal);
        return
        [
            .. (from job in change.Changed
                from alert in job.Alerts
                where alert.IsLoss
                let procedure = procedures[KeyOf(job.Name)].First()
                select AlertWeakened.At(alert, PlaceOf(alert, procedure), job.Name.Job))
                .Concat(
                    from job in change.Changed
                    from safety in job.Safety
                    let procedure = procedures[KeyOf(job.Name)].First()
                    select SafetyStepLost.At(safety, PlaceOf(safety, procedure), job.Name.Job))
                .DistinctBy(finding => (finding.Primary, finding.Message)),
        ];
    }

    /// <summary>The energy of a measure; for a step that is gone, the procedure.</summary>
    private static SourceSpan PlaceOf(SafetyChange safety, ProcedureReport procedure) =>
        safety.IsStep ? procedure.Procedure.Declared : procedure.Procedure.Machine.Items[safety.Item].Declared;

    /// <summary>The step that the alert belongs to, or the procedure.</summary>
    private static SourceSpan PlaceOf(AlertChange alert, ProcedureReport procedure)
    {
        var step = alert.NewStep == 0 ? null : PackStep.Of(procedure.CreatePlan()!).First(one => one.Step.Number == alert.NewStep).Step;
        if (step is null || !procedure.Library.Trees.TryGetValue(step.Source.Path, out var tree))
        {
            return procedure.Procedure.Declared;
        }

        var line = tree.Text.LineSpan(step.Source.Line - 1);
        return new SourceSpan(step.Source.Path, TextSpan.FromBounds(Math.Min(line.Start + step.Source.Column - 1, line.End), line.End));
    }

    private static JobChange? Of(JobName name, ProcedureReport old, ProcedureReport fresh, Func<Plan, Plan, ImmutableArray<VoidPaper>> papers)
    {
        var (before, after) = (old.CreatePlan()!, fresh.CreatePlan()!);
        if (before.Revision == after.Revision)
        {
            return null;
        }

        var (stepsBefore, stepsAfter) = (PackStep.Of(before), PackStep.Of(after));
        return new JobChange
        {
            Name = name,
            OldRevision = before.Revision,
            NewRevision = after.Revision,
            Times = new TimeChange(before.Times.OnePerson, after.Times.OnePerson, before.Times.Crew, after.Times.Crew),
            Cover = [.. Cover(before).Zip(Cover(after)).Where(pair => pair.First != pair.Second).Select(pair => new ValueChange(pair.First.What, pair.First.Said, pair.Second.Said))],
            Steps = StepComparison.Of(stepsBefore, stepsAfter),
            Lists = ListComparison.Of(before, after),
            Alerts = AlertComparison.Of(before, stepsBefore, after, stepsAfter),
            Safety = SafetyComparison.Of(old.Outcome.Strip!, fresh.Outcome.Strip!),
            Void = papers(before, after),
        };
    }

    private static IEnumerable<(string What, string Said)> Cover(Plan plan)
    {
        yield return ("title", plan.Title);
        yield return ("machine", plan.MachineTitle);
        yield return ("variant", string.Join(", ", plan.Variant.Select(option => $"{(option.Present ? "with" : "without")} {option.Title}")));
        yield return ("goal", string.Join(", ", plan.Goals));
        yield return ("people at once", plan.People.ToString(CultureInfo.InvariantCulture));
        yield return ("heaviest lift", plan.HeaviestLift is { } lift ? string.Create(CultureInfo.InvariantCulture, $"{lift.Part}, {lift.Kilograms:0.###} kg, by {lift.People}{(lift.Hoist ? " with a hoist" : "")}") : "");
    }

    private static IEnumerable<JobName> Only(Dictionary<string, ProcedureReport> these, Dictionary<string, ProcedureReport> those) =>
        these.Where(job => !those.ContainsKey(job.Key)).OrderBy(job => job.Key, StringComparer.Ordinal).Select(job => NameOf(job.Value));

    /// <summary>By what makes it the same job; of several of one name the first.</summary>
    private static Dictionary<string, ProcedureReport> ByName(IEnumerable<ProcedureReport> reports) => reports
        .GroupBy(report => KeyOf(NameOf(report)), StringComparer.Ordinal)
        .ToDictionary(same => same.Key, same => same.First(), StringComparer.Ordinal);

    private static string KeyOf(JobName name) => $"{name.Machine}\n{name.Job}\n{string.Join(' ', name.With)}";

    private static JobName NameOf(ProcedureReport report) => new(
        report.Procedure.Job,
        report.Procedure.Title,
        report.Procedure.Machine.Name,
        report.Options);
}
