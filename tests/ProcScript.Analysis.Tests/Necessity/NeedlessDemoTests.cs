using ProcScript.Analysis.Tests.Demo;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Tests.Necessity;

/// <summary>The demo library says nothing superfluous, which its deletion tests show line by line; what is put in besides is found.</summary>
public sealed class NeedlessDemoTests
{
    private const int PartsTried = 2;

    [Fact]
    public void The_demo_library_has_no_step_that_its_goal_does_not_need() => Assert.Empty(Needless.In(DemoLibrary.Report).Select(finding => finding.Message));

    [Fact]
    public void A_part_that_is_stripped_for_nothing_is_told_and_nothing_else()
    {
        var told = 0;
        Parallel.ForEach(Jobs(), job =>
        {
            foreach (var part in job.Machine.Parts.Where(part => !Worked(job).Contains(part)).Take(PartsTried))
            {
                var (path, at) = (job.Declared.Path, EndOfLastStage(job));
                var line = $"strip {part.Name}";
                var report = DemoLibrary.Check(DemoLibrary.FilesThatConcern(path).Select(file =>
                    file.Key == path ? KeyValuePair.Create(path, file.Value.Insert(at, $"    {line}\n")) : file));
                if (!Needless.IsStillRight(report))
                {
                    continue;
                }

                // What reaches the part by the way that the job opens anyway is the part alone; the job's own lines stay needed.
                var finding = Assert.Single(Needless.In(report));
                Assert.StartsWith($"`{line}` is not needed", finding.Message, StringComparison.Ordinal);
                Assert.Equal(DemoLibrary.Files[path], Needless.Mended(report.Library.Trees[path].Text.Content, [finding]));
                Interlocked.Increment(ref told);
            }
        });

        Assert.True(told >= 10, $"only {told} were tried");
    }

    /// <summary>One variant of each procedure with stages of its own.</summary>
    private static IEnumerable<Procedure> Jobs() => DemoLibrary.Report.Procedures
        .Select(report => report.Procedure)
        .DistinctBy(procedure => procedure.Declared)
        .Where(procedure => Syntax(procedure).Items.OfType<StageSyntax>().Any());

    /// <summary>What is worked on: to do that on the bench would be other work.</summary>
    private static IEnumerable<MachineItem?> Worked(Procedure procedure) =>
        procedure.Stages.SelectMany(stage => stage.Steps).Concat(procedure.Work).Where(step => step.Verb >= Verb.Replace).Select(step => step.Target);

    /// <summary>Where the line of the brace begins that closes the last stage.</summary>
    private static int EndOfLastStage(Procedure procedure) =>
        DemoLibrary.Files[procedure.Declared.Path].LastIndexOf('\n', Syntax(procedure).Items.OfType<StageSyntax>().Last().Span.End - 1) + 1;

    private static ProcedureSyntax Syntax(Procedure procedure) =>
        SyntaxTree.Parse(new SourceText(procedure.Declared.Path, DemoLibrary.Files[procedure.Declared.Path]))
            .Root.Declarations.OfType<ProcedureSyntax>().First(one => one.Name.Text == procedure.Name);
}
