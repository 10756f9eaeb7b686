using System.Diagnostics;
using System.Globalization;
using ProcScript.Cli.Verbs;

namespace ProcScript.Cli.Tests.Writing;

public sealed class PendingFilesTests : IDisposable
{
    private readonly TemporaryFolder _disk = new();

    public void Dispose() => _disk.Dispose();

    [Fact]
    public void Nothing_has_its_name_before_the_commit_and_nothing_else_is_there_after()
    {
        _disk.With("a.txt", "old");
        using PendingFiles files = new();
        files.Add(_disk["a.txt"], "new");
        files.Add(_disk["sub/b.txt"], "new");

        Assert.Equal("old", _disk.Read("a.txt"));
        files.Commit(replace: true);

        Assert.Equal(["a.txt", "sub/b.txt"], _disk.Files());
        Assert.Equal(("new", "new"), (_disk.Read("a.txt"), _disk.Read("sub/b.txt")));
    }

    [Fact]
    public void What_is_not_committed_is_gone()
    {
        using (PendingFiles files = new())
        {
            files.Add(_disk["a.txt"], "new");
        }

        Assert.Empty(_disk.Files());
    }

    [Fact]
    public void Where_one_file_was_saved_by_somebody_else_none_is_replaced()
    {
        _disk.With("a.txt", "old").With("b.txt", "old");
        using (PendingFiles files = new())
        {
            files.Replace(_disk["a.txt"], "a.txt", "old", "new");
            files.Replace(_disk["b.txt"], "b.txt", "old", "new");
            _disk.With("b.txt", "theirs");

            Assert.Equal(
                "'b.txt' was changed by somebody else meanwhile: nothing was written. Run it again.",
                Assert.Throws<UsageException>(() => files.Commit(replace: true)).Message);
        }

        Assert.Equal(["a.txt", "b.txt"], _disk.Files());
        Assert.Equal(("old", "theirs"), (_disk.Read("a.txt"), _disk.Read("b.txt")));
    }

    [Fact]
    public void What_a_killed_run_left_is_removed_and_what_a_running_one_writes_is_not()
    {
        var name = Path.GetFileName(LeftoverFiles.NameFor(_disk["a.txt"]));
        var own = Environment.ProcessId.ToString(CultureInfo.InvariantCulture);
        var left = name.Replace($"-{own}-", $"-{Ended()}-", StringComparison.Ordinal);
        var other = string.Concat(".a.txt.00000000-", Ended(), name.AsSpan(name.LastIndexOf('-')));
        _disk.With(name, "running").With(left, "left").With(other, "another machine's").With(".notes.tmp", "the user's");

        LeftoverFiles.Clean(_disk.Path);

        Assert.Equal(new[] { name, other, ".notes.tmp" }.Order(StringComparer.Ordinal), _disk.Files());
        File.SetLastWriteTimeUtc(_disk[other], DateTime.UtcNow.AddDays(-2));
        LeftoverFiles.Clean(_disk.Path);
        Assert.DoesNotContain(other, _disk.Files());
    }

    /// <summary>The number of a process that is no more.</summary>
    private static string Ended()
    {
        using var process = Process.Start(new ProcessStartInfo("dotnet", ["--version"]) { RedirectStandardOutput = true })!;
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return process.Id.ToString(CultureInfo.InvariantCulture);
    }
}
