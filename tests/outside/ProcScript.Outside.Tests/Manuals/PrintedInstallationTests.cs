using ProcScript.Analysis;
using ProcScript.Analysis.Plans;
using ProcScript.Model.Sources;

namespace ProcScript.Outside.Tests.Manuals;

/// <summary>
/// Removals of public-domain technical manuals of the US Army, written as machines and procedures in own words; the refit that is derived
/// from them is the installation that the manual prints. Each <c>machine.proc</c> names its manual, the paragraph and how far it was read;
/// each <c>printed.txt</c> has the printed order, and a line for whatever differs from the exact reverse.
/// </summary>
public sealed class PrintedInstallationTests
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "Manuals");

    /// <summary>The manuals.</summary>
    public static TheoryData<string> Manuals => [.. Directory.EnumerateDirectories(Folder).Select(folder => Path.GetFileName(folder)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Manuals))]
    public void The_derived_refit_is_the_printed_installation(string manual)
    {
        var printed = PrintedInstallation.Read(Path.Combine(Folder, manual, "printed.txt"));
        var derived = Refit(manual, printed.Procedure);

        var next = 0;
        foreach (var run in printed.Steps.SelectMany(step => step))
        {
            Assert.Equal(run, derived.Skip(next).Take(run.Length).Order(StringComparer.Ordinal));
            next += run.Length;
        }

        Assert.Equal(next, derived.Count);
    }

    /// <summary>The manual that differs from the exact reverse does so by its three rules alone.</summary>
    [Fact]
    public void Without_its_rules_the_pump_goes_together_in_the_exact_reverse() => Assert.Equal(
        ["fit seal", "fit adapter", "fit oring", "fit wear_plate", "fasten screws", "fit shims", "fit impeller", "fasten bolt"],
        Refit("pump-impeller", "impeller_out"));

    [Fact]
    public void At_least_three_manuals_are_transcribed() => Assert.True(Manuals.Count >= 3);

    private static List<string> Refit(string manual, string procedure)
    {
        var text = File.ReadAllText(Path.Combine(Folder, manual, "machine.proc"));
        var report = LibraryCheck.Run(new MemorySourceStore([KeyValuePair.Create("machine.proc", text)])).Procedures.Single(one => one.Procedure.Name == procedure);
        Assert.True(report.IsProven, $"{procedure} is not proven");
        return [.. report.CreatePlan()!.Refit.SelectMany(card => card.Steps).Select(Words)];
    }

    private static string Words(PlanStep step) => step.Item.Length == 0 ? step.Verb : $"{step.Verb} {step.Item}";
}
