using System.Collections.Immutable;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Stripping;
using ProcScript.Model;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Reaching;

/// <summary>Answers how a machine goes back together when a job stops in the middle of its strip or its work.</summary>
public static class LibraryBack
{
    /// <summary>Finds the shortest way back that was found to hold, and tells it as a plan.</summary>
    /// <param name="library">The library.</param>
    /// <param name="settings">What the shop has chosen.</param>
    /// <param name="job">The procedure's name, with its arguments behind hyphens.</param>
    /// <param name="after">The number of the last step that is done, as cards number them.</param>
    /// <param name="with">Exactly the options that the machine has; null for as few as it takes.</param>
    /// <exception cref="ReachRefusedException">There is no answer.</exception>
    public static BackReport Find(Library library, CheckSettings settings, string job, int after, ImmutableArray<string>? with = null) =>
        Find(library, settings, AskedJobs.Find(library, [job], with)[0], after);

    /// <summary>The same for a procedure in one variant.</summary>
    /// <exception cref="ReachRefusedException">There is no answer.</exception>
    public static BackReport Find(Library library, CheckSettings settings, Procedure procedure, int after)
    {
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(procedure);
        var facts = new MachineFacts(procedure.Machine) { Settings = settings.For(procedure.Declared.Path) };
        var whole = StripRunner.Run(new(library, isNoted: false), facts, procedure);
        if (!whole.IsSound)
        {
            throw new ReachRefusedException($"'{procedure.Job}' cannot be done as written, so that nobody knows how the machine stands; 'procscript check' says why.");
        }

        if (after < 1 || after > whole.Actions.Length)
        {
            throw new ReachRefusedException(whole.Actions.IsEmpty
                ? $"'{procedure.Job}' takes nothing off."
                : $"'{procedure.Job}' has no step {after} before its refit: strip and work have the steps 1 to {whole.Actions.Length}. From a step of the refit on, go on with the next.");
        }

        var half = new HalfStripped(facts, whole, after);
        if (half.Derive() is not { } derived)
        {
            throw new ReachRefusedException(
                $"no way back from step {after} of '{procedure.Job}' was found that is proven. Go on with the strip as far as the next card, and ask again.");
        }

        var best = half.Shortest(derived);
        var last = whole.Actions[after - 1];
        return new BackReport
        {
            Job = procedure.Job,
            Title = procedure.Title,
            Machine = procedure.Machine.Name,
            MachineTitle = procedure.Machine.Title,
            With = [.. procedure.Machine.With.Select(option => option.Name)],
            After = after,
            AfterText = StepText.Of(new NamedAction(last.Verb, last.Target), Wordbook.English),
            Cost = best.Cost,
            DerivedCost = derived.Cost,
            Bound = Math.Min(best.Cost, HalfStripped.Bound(best)),
            LeftOut = [.. best.LeftOut.Distinct(StringComparer.Ordinal)],
            Plan = PlanBuilder.Build(library, best.Strip, best.Refit, facts.Settings),
        };
    }
}

/// <summary>How a machine goes back together from the middle of a job. Times are in seconds.</summary>
public sealed record BackReport
{
    /// <summary>The version of this document's form.</summary>
    public string Format { get; init; } = "1";

    /// <summary>The job.</summary>
    public required string Job { get; init; }

    /// <summary>What people call the job.</summary>
    public required string Title { get; init; }

    /// <summary>The name of the machine.</summary>
    public required string Machine { get; init; }

    /// <summary>What people call the machine.</summary>
    public required string MachineTitle { get; init; }

    /// <summary>The options that it has in this answer.</summary>
    public required ImmutableArray<string> With { get; init; }

    /// <summary>The last step of the job that is done.</summary>
    public required int After { get; init; }

    /// <summary>That step, in words.</summary>
    public required string AfterText { get; init; }

    /// <summary>How long the way back takes with what has to be renewed for it.</summary>
    public required double Cost { get; init; }

    /// <summary>How long the exact way back takes, each step undone by itself.</summary>
    public required double DerivedCost { get; init; }

    /// <summary>How long any way back takes at the least.</summary>
    public required double Bound { get; init; }

    /// <summary>The checks and tests of the job that have no place on this way back, since they ask for what is not so on it.</summary>
    public required ImmutableArray<string> LeftOut { get; init; }

    /// <summary>The job as far as it was done, with the way back as its refit; its steps are numbered anew.</summary>
    public required Plan Plan { get; init; }
}
