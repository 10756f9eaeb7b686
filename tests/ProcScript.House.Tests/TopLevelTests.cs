namespace ProcScript.House.Tests;

public sealed class TopLevelTests
{
    private static readonly string[] Allowed =
    [
        "README.md", "DEVELOPERS.md", "LICENSE", "ProcScript.sln",
        "grammar", "src", "tests", "procedures",
        "Directory.Build.props", "Directory.Packages.props", "global.json",
    ];

    [Fact]
    public void The_top_level_holds_only_what_a_visitor_looks_for()
    {
        var unexpected = Directory.EnumerateFileSystemEntries(Repository.Root)
            .Select(Path.GetFileName)
            .OfType<string>()
            .Where(name => !name.StartsWith('.'))
            .Except(Allowed)
            .Except(Ignored());

        Assert.Empty(unexpected);
    }

    private static IEnumerable<string> Ignored() =>
        Repository.Lines(".gitignore").Select(line => line.Trim('/'));
}
