using System.Diagnostics;
using System.Runtime.CompilerServices;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using ProcScript.Analysis.Machines.Documents;
using ProcScript.Analysis.Plans;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Tests.Outside;

/// <summary>
/// The checker of <c>tests/outside/checker</c>: another state machine in another language, which reads what the compiler writes and nothing of
/// the compiler. It runs in a process of its own.
/// </summary>
internal static class OtherChecker
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "checker");

    /// <summary>Judges each case, in their order.</summary>
    public static async Task<IReadOnlyList<OtherVerdict>> JudgeAsync(IReadOnlyCollection<PlanCase> cases, CancellationToken stop)
    {
        using var process = Start();
        var feeding = FeedAsync(process, cases, stop);
        var output = process.StandardOutput.ReadToEndAsync(stop);
        var error = process.StandardError.ReadToEndAsync(stop);
        await Task.WhenAll(feeding, output, error);
        await process.WaitForExitAsync(stop);
        Assert.True(process.ExitCode == 0, await error);
        return [.. (await output).Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(OtherVerdict.Read)];
    }

    private static async Task FeedAsync(Process process, IEnumerable<PlanCase> cases, CancellationToken stop)
    {
        try
        {
            var model = "";
            foreach (var one in cases)
            {
                if (!ReferenceEquals(one.Model, model))
                {
                    model = one.Model;
                    await process.StandardInput.WriteLineAsync(model.AsMemory(), stop);
                }

                await process.StandardInput.WriteLineAsync(one.Plan.AsMemory(), stop);
            }
        }
        catch (IOException)
        {
            // It ended early, and its error output says why.
        }

        process.StandardInput.Close();
    }

    private static Process Start()
    {
        ProcessStartInfo start = new("python3", ["-B", Folder, "--stream"])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardInputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
            StandardOutputEncoding = Encoding.UTF8,
        };
        try
        {
            return Process.Start(start)!;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            Assert.Skip("python3 is not installed.");
            throw;
        }
    }
}

/// <summary>A plan with the model of its machine, as another program gets them.</summary>
/// <param name="Model">The model as a line of JSON; of the plans of one machine the same text.</param>
/// <param name="Plan">The plan as a line of JSON.</param>
/// <param name="About">What it is, for a message.</param>
internal sealed record PlanCase(string Model, string Plan, string About)
{
    private static readonly ConditionalWeakTable<Machine, string> Models = [];

    /// <summary>Writes a plan and the model of its machine down.</summary>
    public static PlanCase Of(ProcedureReport report, Plan plan, string about) =>
        new(Models.GetValue(report.Procedure.Machine, Write), JsonSerializer.SerializeToNode(plan, PlanJson.Published.Plan)!.ToJsonString(), about);

    private static string Write(Machine machine) =>
        JsonSerializer.SerializeToNode(ModelBuilder.Build([machine]), ModelJson.Published.ModelDocument)!.ToJsonString();
}

/// <summary>What the other checker says.</summary>
/// <param name="Strip">What is wrong with the strip; null where nothing is.</param>
/// <param name="Refit">What is wrong with the refit; null where nothing is, or the strip is wrong.</param>
/// <param name="Asked">What the author asks for and does not get; null where there is no such thing.</param>
/// <param name="Form">Where plan and model do not agree; null where they do.</param>
internal sealed record OtherVerdict(string? Strip, string? Refit, string? Asked, string? Form)
{
    /// <summary>Whether nothing at all is wrong.</summary>
    public bool IsGood => this is { Strip: null, Refit: null, Asked: null, Form: null };

    /// <summary>Reads a line that it writes.</summary>
    public static OtherVerdict Read(string line)
    {
        var verdict = JsonNode.Parse(line)!;
        return new OtherVerdict((string?)verdict["strip"], (string?)verdict["refit"], (string?)verdict["asked"], (string?)verdict["form"]);
    }
}
