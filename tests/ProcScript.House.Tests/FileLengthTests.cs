namespace ProcScript.House.Tests;

public sealed class FileLengthTests
{
    private const int Longest = 500;
    private const int NineInTen = 300;
    private const int Median = 120;

    [Fact]
    public void No_file_is_too_long()
    {
        Assert.Empty(HandWritten().Where(file => file.Lines > Longest).Select(file => $"{file.Path}: {file.Lines} lines"));
    }

    [Fact]
    public void Nine_in_ten_files_are_short()
    {
        Assert.InRange(AtRank(0.9), 1, NineInTen);
    }

    [Fact]
    public void The_median_file_is_about_a_hundred_lines_at_most()
    {
        Assert.InRange(AtRank(0.5), 1, Median);
    }

    private static int AtRank(double share)
    {
        var lengths = HandWritten().Select(file => file.Lines).Order().ToList();
        return lengths[(int)(share * (lengths.Count - 1))];
    }

    private static IEnumerable<(string Path, int Lines)> HandWritten() =>
        from path in Repository.Files("src", "*.cs").Concat(Repository.Files("tests", "*.cs"))
        where !path.Contains("/Generated/", StringComparison.Ordinal) && !path.EndsWith(".g.cs", StringComparison.Ordinal)
        select (path, Repository.Lines(path).Length);
}
