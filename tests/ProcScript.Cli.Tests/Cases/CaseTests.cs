using ProcScript.Analysis;
using ProcScript.Cli.Tests.Rules;

namespace ProcScript.Cli.Tests.Cases;

/// <summary>Every folder below <c>tests/cases</c>: what the program says of the sources is what stands beside them.</summary>
public sealed class CaseTests
{
    private static readonly string[] ExpectedFiles = ["findings.txt", "refit.txt", "plan.json", "cards.md", "cards.html", "syntax.txt"];

    public static TheoryData<string> Names => [.. Case.All.Select(found => found.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public async Task The_findings_are_as_expected(string name)
    {
        Case found = new(name);
        var run = (await CliRun.AtAsync(found.Folder, "check", ".", "--root", ".")).AssertNoBug();

        Assert.Equal("", run.Error);
        Expected.Compare(Path.Combine(found.Folder, "findings.txt"), run.Output);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_order_of_the_steps_is_as_expected(string name)
    {
        Case found = new(name);
        var path = Path.Combine(found.Folder, "refit.txt");
        if (File.Exists(path))
        {
            Expected.Compare(path, OrderText.Of(LibraryCheck.Run(Library.Of(found).Store, TestContext.Current.CancellationToken)));
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public async Task The_packs_are_as_expected(string name)
    {
        Case found = new(name);
        var wanted = ExpectedFiles[2..5].Where(file => File.Exists(Path.Combine(found.Folder, file))).ToList();
        if (wanted.Count == 0)
        {
            return;
        }

        using TemporaryFolder packs = new();
        var run = (await CliRun.AtAsync(found.Folder, "build", ".", "--root", ".", "-o", packs.Path)).AssertNoBug();
        foreach (var file in wanted)
        {
            var built = packs.Files().Where(path => path.EndsWith("/" + file, StringComparison.Ordinal)).ToList();
            Assert.True(built.Count == 1, $"A case with {file} builds one pack, this one {built.Count}.\n{run.Output}{run.Error}");
            Expected.Compare(Path.Combine(found.Folder, file), packs.Read(built[0]));
        }
    }

    [Fact]
    public void Every_file_is_a_source_or_expected_of_one()
    {
        Assert.NotEmpty(Case.All);
        var strays =
            from path in Case.FilesBelow(Checkout.Cases)
            where !Case.IsSource(path) && !Case.IsSettings(path) && !Case.IsTranslation(path) && !Case.IsPicture(path) && !Case.IsList(path)
            let owner = Case.All.FirstOrDefault(found => path == $"{found.Name}/{Path.GetFileName(path)}" && found.Sources.Count > 0)
            where owner is null || !ExpectedFiles.Contains(Path.GetFileName(path))
            select path;

        Assert.Empty(strays);
    }

    [Fact]
    public void Every_source_belongs_to_a_case()
    {
        var ofCases = Case.All.SelectMany(found => found.Sources.Select(source => $"{found.Name}/{source}"));

        Assert.Empty(Case.FilesBelow(Checkout.Cases).Where(Case.IsSource).Except(ofCases));
    }
}
