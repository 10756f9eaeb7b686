using ProcScript.Model.Machines;
using ProcScript.Syntax;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Tests.Demo;

public sealed class DemoLibraryTests
{
    private static readonly string[] TractorJobs =
        ["seat_out", "replace_pretensioner", "roof_off", "headliner_out", "replace_evaporator", "replace_column_switch", "repair_right_branch"];

    public static TheoryData<string> MachineFolders => [.. DemoLibrary.MachineFolders];

    private static IEnumerable<Machine> Tractors => DemoLibrary.Report.Library.Machines.Where(machine => machine.Name == "ketterby_t40");

    [Fact]
    public void It_has_neither_errors_nor_warnings() =>
        Assert.Empty(DemoLibrary.Report.Findings.Where(finding => finding.Severity >= Severity.Warning).Select(DemoLibrary.Words));

    [Fact]
    public void Every_procedure_is_proven_in_every_variant()
    {
        Assert.NotEmpty(DemoLibrary.Report.Procedures);
        Assert.All(DemoLibrary.Report.Procedures, procedure => Assert.True(procedure.IsProven, procedure.Procedure.Name));
    }

    [Fact]
    public void Every_procedure_says_what_it_is_for() =>
        Assert.All(DemoLibrary.Report.Procedures, procedure => Assert.NotEmpty(procedure.Procedure.Goals));

    [Fact]
    public void The_tractor_has_its_seven_jobs_each_in_a_file_of_its_own()
    {
        var files = TractorJobs
            .Select(job => DemoLibrary.Report.Procedures.First(procedure => procedure.Procedure.Name == job).Procedure.Declared.Path)
            .Distinct()
            .ToList();

        Assert.Equal(TractorJobs.Length, files.Count);
    }

    [Fact]
    public void The_tractor_has_at_least_40_parts_and_120_joints_in_its_plainest_variant()
    {
        var plain = Tractors.MinBy(machine => machine.With.Length)!;

        Assert.Empty(plain.With);
        Assert.True(plain.Parts.Length >= 40, $"{plain.Parts.Length} parts");
        Assert.True(plain.Joints.Length >= 120, $"{plain.Joints.Length} joints and covers");
    }

    [Fact]
    public void A_tractor_job_is_checked_in_all_eight_variants() =>
        Assert.Equal(8, DemoLibrary.Report.Procedures.Count(procedure => procedure.Procedure.Name == "seat_out"));

    [Theory]
    [MemberData(nameof(MachineFolders))]
    public void Every_machine_has_jobs(string folder) =>
        Assert.Contains(DemoLibrary.Report.Procedures, procedure => DemoLibrary.FolderOf(procedure.Procedure.Declared.Path) == folder);

    [Fact]
    public void Every_action_of_a_machine_serves_some_variant()
    {
        // A step that no variant reaches would be text that nothing checks.
        var reached = DemoLibrary.Report.Procedures
            .SelectMany(procedure => procedure.Procedure.Stages.SelectMany(stage => stage.Steps).Concat(procedure.Procedure.Work))
            .Select(step => step.VerbSpan)
            .ToHashSet();
        var written = DemoLibrary.Files
            .Select(file => SyntaxTree.Parse(new SourceText(file.Key, file.Value)))
            .SelectMany(tree => Deletion.ActionsIn(tree.Root).Select(action => new SourceSpan(tree.Text.Path, action.Verb.Span)));

        Assert.Empty(written.Where(verb => !reached.Contains(verb)).Select(verb => $"{verb.Path} {verb.Span.Start}"));
    }
}
