using CsCheck;
using ProcScript.Analysis;
using ProcScript.Analysis.Checking;
using ProcScript.Cli.Tests.Cases;
using ProcScript.Model;
using ProcScript.Model.Sources;

namespace ProcScript.Cli.Tests.Versions;

/// <summary>Whatever has changed: of what it touches, the findings are those of a check of the whole library.</summary>
public sealed class SameAsWholeTests
{
    /// <summary>Every case of every rule and the demo library, side by side, as one library with a finding of every kind.</summary>
    private static readonly Lazy<Library> All = new(() => LibraryBinder.Bind(new MemorySourceStore(
        Case.All.SelectMany(found => found.Sources.Select(path => Source(found.Folder, path, found.Name)))
            .Concat(Case.FilesBelow(Demo).Where(Case.IsSource).Select(path => Source(Demo, path, "demo"))))));

    private static string Demo => Path.Combine(Checkout.Root, "procedures");

    [Fact]
    public void The_findings_of_a_part_are_those_of_the_whole_there()
    {
        var whole = LibraryCheck.Run(All.Value, CheckSettings.Usual, TestContext.Current.CancellationToken);
        string[] paths = [.. All.Value.Trees.Keys, "demo/catalog/gone.proc", "nowhere.proc"];

        Gen.Shuffle(paths, 1, 40).Sample(
            changed =>
            {
                var scope = CheckScope.TouchedBy(All.Value, changed);
                var part = LibraryCheck.Judge(All.Value, CheckSettings.Usual, scope, TestContext.Current.CancellationToken);

                Assert.All(changed.Where(All.Value.Trees.ContainsKey), path => Assert.True(scope.Holds(path)));
                Assert.Equal(Lines(whole, scope), Lines(part, scope));
                Assert.Equal(whole.Procedures.Where(one => scope.Holds(one.Procedure)).Select(Line), part.Procedures.Select(Line));
                Assert.Subset(Codes(whole), Codes(part));
            },
            iter: 12,
            threads: 1);
    }

    [Fact]
    public void Everything_touched_is_the_whole()
    {
        var whole = LibraryCheck.Run(All.Value, CheckSettings.Usual, TestContext.Current.CancellationToken);
        var scope = CheckScope.TouchedBy(All.Value, All.Value.Trees.Keys);

        Assert.Equal(
            Lines(whole, scope),
            Lines(LibraryCheck.Judge(All.Value, CheckSettings.Usual, scope, TestContext.Current.CancellationToken), scope));
        Assert.NotEmpty(whole.Findings);
    }

    private static IEnumerable<string> Lines(LibraryReport report, CheckScope scope) => report.Findings
        .Where(reported => scope.Holds(reported.Finding.Primary.Path))
        .Select(reported => $"{reported.Finding.Primary} {reported.Severity} {reported.Finding.Rule.Code} {reported.Finding.Message} {reported.Fingerprint} {reported.Finding.Related.Length} {reported.Finding.Fixes.Length}");

    private static string Line(ProcedureReport report) => $"{report.Procedure.Declared} {report.Procedure.Job} {report.IsProven}";

    private static HashSet<(string, ProcScript.Syntax.Text.SourceSpan)> Codes(LibraryReport report) =>
        [.. report.Findings.Select(reported => (reported.Finding.Rule.Code, reported.Finding.Primary))];

    private static KeyValuePair<string, string> Source(string folder, string path, string name) =>
        KeyValuePair.Create($"{name}/{path}", File.ReadAllText(Path.Combine(folder, path)));
}
