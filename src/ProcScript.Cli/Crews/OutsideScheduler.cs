using System.Diagnostics;
using System.Text.Json;
using ProcScript.Analysis.Crews;
using ProcScript.Cli.Companions;

namespace ProcScript.Cli.Crews;

/// <summary>
/// The exact planner, which is a program of its own: it brings a solver along that is larger than this whole program. What it answers is held to the
/// problem before anybody works by it.
/// </summary>
/// <param name="program">The program, as a full path.</param>
internal sealed class OutsideScheduler(string program) : ICrewScheduler
{
    /// <summary>Its name.</summary>
    public const string Name = "procscript-exact";

    /// <summary>Finds it beside this program, or on the PATH.</summary>
    /// <exception cref="UsageException">It is not there.</exception>
    public static OutsideScheduler Find(Surroundings around) => new(CompanionProgram.Find(Name, "--exact", around));

    /// <inheritdoc/>
    /// <exception cref="UsageException">It cannot be started, or answers with something else than a schedule.</exception>
    public CrewSchedule Schedule(CrewProblem problem)
    {
        try
        {
            var answer = Ask(JsonSerializer.Serialize(problem, CrewJson.Default.CrewProblem));
            var schedule = JsonSerializer.Deserialize(answer, CrewJson.Default.CrewSchedule) ?? throw new JsonException("there is none");
            return schedule.Starts.IsDefault || schedule.People.IsDefault || CrewCheck.Failures(problem, schedule).Any()
                ? throw new JsonException("it is no schedule of this job")
                : schedule;
        }
        catch (JsonException failure)
        {
            throw new UsageException($"the answer of {program} cannot be used: {failure.Message}; is it of another version? Leave --exact out to do without.");
        }
    }

    private string Ask(string problem)
    {
        using var process = CompanionProgram.Start(new ProcessStartInfo(program) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true });
        var complaint = process.StandardError.ReadToEndAsync();
        // It reads all before it answers.
        process.StandardInput.Write(problem);
        process.StandardInput.Close();
        var answer = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode == 0 ? answer : throw new UsageException($"{program} has failed: {complaint.Result.Trim()}");
    }
}
