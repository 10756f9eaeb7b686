using System.Text.RegularExpressions;

namespace ProcScript.House.Tests;

public sealed partial class DocumentPathTests
{
    public static TheoryData<string> Documents =>
        [.. new[] { "README.md", "DEVELOPERS.md", "grammar/FIRST-MACHINE.md", "grammar/LANGUAGE.md", "grammar/RULES.md" }.Where(Repository.Exists)];

    [Theory]
    [MemberData(nameof(Documents))]
    public void Every_path_in_a_document_exists(string document)
    {
        Assert.Empty(DeadPaths(document, Repository.Read(document)));
    }

    [Fact]
    public void Every_test_that_the_developers_page_names_exists()
    {
        var named = TestName().Matches(Repository.Read("DEVELOPERS.md"));
        var missing = named.Where(match => !Repository.Files("tests", match.Groups["class"].Value + ".cs")
            .Any(path => Repository.Read(path).Contains($" {match.Groups["test"].Value}(", StringComparison.Ordinal)));

        Assert.NotEmpty(named);
        Assert.Empty(missing.Select(match => match.Value));
    }

    [Fact]
    public void A_dead_link_and_a_dead_path_are_both_found()
    {
        const string text = "See [gone](gone.md), [here](LICENSE#top), `src/Gone/`, `src/` and `dotnet test`.";

        Assert.Equal(["gone.md", "src/Gone/"], DeadPaths("README.md", text).Order(StringComparer.Ordinal));
    }

    /// <summary>Links count from the document's folder; paths in code spans from the root.</summary>
    private static IEnumerable<string> DeadPaths(string document, string text)
    {
        var folder = Path.GetDirectoryName(document)!;
        var links = Link().Matches(text).Select(match => match.Groups["path"].Value)
            .Where(path => !path.Contains("://", StringComparison.Ordinal))
            .Where(path => !Repository.Exists(Path.Combine(folder, path)));
        var spans = CodeSpan().Matches(text).Select(match => match.Groups["path"].Value)
            .Where(path => !path.Contains('*') && !path.Contains("CODE", StringComparison.Ordinal))
            .Where(path => !Repository.Exists(path));
        return links.Concat(spans).Distinct();
    }

    [GeneratedRegex(@"`(?<class>\w+Tests)\.(?<test>\w+)`")]
    private static partial Regex TestName();

    [GeneratedRegex(@"\]\((?<path>[^)#\s]+)(#[^)]*)?\)")]
    private static partial Regex Link();

    [GeneratedRegex(@"(?<=[`\s])(?<path>(src|tests|grammar|procedures|\.ci)/[^\s`,;:)]*)(?=[`\s,;:)])")]
    private static partial Regex CodeSpan();
}
