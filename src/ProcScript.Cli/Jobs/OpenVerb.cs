using System.Collections.Immutable;
using ProcScript.Cards;
using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;
using ProcScript.Cli.Verbs;
using ProcScript.Jobs.Files;
using ProcScript.Jobs.Freezing;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Stores;

namespace ProcScript.Cli.Jobs;

/// <summary>How a job is opened.</summary>
/// <param name="Input">The library.</param>
/// <param name="Procedure">The procedure, with its arguments behind hyphens.</param>
/// <param name="With">The options that the machine has.</param>
/// <param name="Serial">Which machine it is.</param>
/// <param name="Order">The work order.</param>
/// <param name="Jobs">The folder of jobs.</param>
/// <param name="By">Who opens it.</param>
/// <param name="Colour">When to print in colour.</param>
internal sealed record OpenRequest(
    InputRequest Input, string Procedure, ImmutableArray<string> With, string Serial, string Order, string Jobs, string By, ColourChoice Colour);

/// <summary><c>job open</c>: freezes a procedure with its cards, and begins a journal.</summary>
internal static class OpenVerb
{
    /// <summary>The version of the journal's form.</summary>
    private const string Format = "1";

    /// <summary>Checks, freezes and opens.</summary>
    public static async Task<ExitCode> RunAsync(OpenRequest request, Surroundings around, CancellationToken stop)
    {
        var terminal = Terminal.For(around, request.Colour);
        if (await FreezeAsync(request.Input, request.Procedure, request.With, terminal, around, stop) is not { } frozen)
        {
            return ExitCode.Findings;
        }

        var plan = frozen.Course.Plan;
        if (plan.Questions is [var question, ..])
        {
            throw new UsageException($"'{plan.Job}' is a draft: nobody may work from it while a question is open ({question.Source.Path}:{question.Source.Line}: {question.Text}).");
        }

        var files = frozen.Library.ToDictionary(file => $"{LoadedJob.LibraryFolder}/{file.Key}", file => file.Value, StringComparer.Ordinal);
        var pack = JobPack.Files(LoadedJob.PackFolder, plan, PackTemplates.Standard, frozen.Settings, out var faults);
        TemplateFolder.Refuse(faults);
        foreach (var (path, content) in pack)
        {
            files[path] = content;
        }

        var now = around.Clock.GetLocalNow();
        var store = new FileJobStore(Path.GetFullPath(request.Jobs, around.CurrentFolder));
        var opened = new JobEvent
        {
            Id = Guid.NewGuid().ToString("N"),
            Kind = EventKind.Opened,
            At = now,
            Logged = now,
            By = request.By,
            Plan = plan.Revision,
            Job = new JobHead(
                Format, plan.Job, plan.Title, plan.Machine, plan.MachineTitle, request.Serial, request.Order,
                [.. plan.Variant.Where(option => option.Present).Select(option => option.Name)], plan.Revision, frozen.Course.Steps.Length, ProductVersion.Program),
        };
        var name = await store.CreateAsync(JobNames.Of(request.Order, request.Serial, plan.Job), files, opened, stop);
        terminal.WriteLine(new Piece($"opened {Path.Combine(request.Jobs, name)}: {plan.Title}, {Counted.Of(frozen.Course.Steps.Length, "step")}"));
        terminal.WriteLine(new Piece($"cards: {Path.Combine(request.Jobs, name, LoadedJob.PackFolder, JobPack.CardsFile)}"));
        return ExitCode.Clean;
    }

    /// <summary>Checks a library and gathers what a job is made from; null where it is not proven, which has been told then.</summary>
    /// <exception cref="UsageException">There is no such procedure, or its pictures are not as they have to be.</exception>
    public static async Task<FrozenJob?> FreezeAsync(
        InputRequest input, string procedure, ImmutableArray<string> with, Terminal terminal, Surroundings around, CancellationToken stop)
    {
        var library = await CheckedLibrary.RunAsync(input, store => new SettingsRequest(null).Read(store), around, stop);
        var named = library.Procedures.Where(report => report.Procedure.Job == procedure).ToList();
        var report = PackSelection.Choose(named.Count > 0 ? named : library.Procedures, named.Count > 0 ? null : procedure, with) is [var only]
            ? only
            : throw new UsageException($"'{procedure}' takes arguments: say one of {string.Join(", ", library.Procedures.Where(one => one.Procedure.Name == procedure).Select(one => one.Procedure.Job).Distinct())}.");
        if (report.CreatePlan() is not { } plan)
        {
            library.PrintFindings(library.Outcome, terminal, stop);
            terminal.WriteLine(new Piece($"{report.Procedure.Job} is not proven: no job can be opened on it"));
            return null;
        }

        if (library.Report.PicturesInError(plan) is [_, ..] lacking)
        {
            throw new UsageException($"'{plan.Job}' lacks {string.Join(", ", lacking)}: cards without a picture that somebody has to see are not frozen.");
        }

        return FrozenJob.Of(report, library.Store, stop)
            ?? throw new UsageException($"what '{plan.Job}' is made from does not come to the same cards by itself. Name the whole library with --in.");
    }
}
