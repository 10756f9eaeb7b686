using System.Collections.Immutable;
using System.Text.Json;
using ProcScript.Analysis.Crews;
using ProcScript.Cli.Crews;
using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;
using ProcScript.Syntax.Findings;

namespace ProcScript.Cli.Verbs;

/// <summary><c>crew</c>: says who does what when.</summary>
internal static class CrewVerb
{
    /// <summary>Checks, schedules, and tells.</summary>
    public static async Task<ExitCode> RunAsync(CrewRequest request, Surroundings around, CancellationToken stop)
    {
        ICrewScheduler scheduler = request.Exact ? OutsideScheduler.Find(around, request.Seconds) : new ListScheduler();
        var library = await CheckedLibrary.RunAsync(request.Input, request.Settings.Read, around, stop);
        if (library.Findings.Any(reported => reported.Severity == Severity.Error))
        {
            library.PrintFindings(library.Outcome, Terminal.For(around with { Output = around.Error }, request.Colour), stop);
            if (library.Procedures.IsEmpty)
            {
                return library.ExitCode(Severity.Error);
            }
        }

        CertifiedPeople.Check(request.Size, library.Report.Library);
        var plans = ImmutableArray.CreateBuilder<CrewPlan>();
        var chosen = PackSelection.Choose(library.Procedures, request.Procedure, request.With);
        foreach (var report in chosen)
        {
            stop.ThrowIfCancellationRequested();
            if (await Task.Run(() => report.CreateCrewPlan(request.Size, scheduler), stop) is { } plan)
            {
                plans.Add(plan);
            }
            else
            {
                around.Error.WriteLine($"procscript: {report.Procedure.Name} is not proven: nobody can be told what to do. See 'procscript check'.");
            }
        }

        if (plans.Count > 0)
        {
            Tell(new CrewDocument("1", plans.ToImmutable()), request, library, around);
        }

        return plans.Count < chosen.Length ? ExitCode.Findings : library.ExitCode(Severity.Error);
    }

    private static void Tell(CrewDocument document, CrewRequest request, CheckedLibrary library, Surroundings around)
    {
        if (request.Output is { } output && !OutputFile.IsOutput(output))
        {
            using StringWriter text = new();
            Write(around with { Output = text }, ColourChoice.Never);
            OutputFile.Write(output, text.ToString(), library.Store, around).WriteLine($"wrote {output}: {Counted.Of(document.Jobs.Length, "job")}");
        }
        else
        {
            Write(around, request.Colour);
        }

        void Write(Surroundings to, ColourChoice colour)
        {
            if (request.Json)
            {
                to.Output.Write(LogCommands.DisarmJson(JsonSerializer.Serialize(document, CrewJson.Published.CrewDocument)) + "\n");
            }
            else
            {
                CrewListing.Print(document.Jobs, Terminal.For(to, colour));
            }
        }
    }
}

/// <summary>What <c>crew</c> is asked to do.</summary>
/// <param name="Input">What to read.</param>
/// <param name="Settings">What is chosen about the checks.</param>
/// <param name="Procedure">The one procedure, or null for all.</param>
/// <param name="With">The options that the machine has.</param>
/// <param name="Size">How many people there are.</param>
/// <param name="Exact">Whether an exact plan is asked for.</param>
/// <param name="Seconds">How long one may be searched for; null for the usual limit.</param>
/// <param name="Json">Whether to tell programs.</param>
/// <param name="Output">The file to write, as typed; null for the output.</param>
/// <param name="Colour">When to print in colour.</param>
internal sealed record CrewRequest(
    InputRequest Input,
    SettingsRequest Settings,
    string? Procedure,
    ImmutableArray<string> With,
    CrewSize Size,
    bool Exact,
    double? Seconds,
    bool Json,
    string? Output,
    ColourChoice Colour);
