using System.Diagnostics;

namespace ProcScript.Cli.Tests.Versions;

/// <summary>A folder that is kept in Git, for one test.</summary>
internal sealed class GitFolder : IDisposable
{
    private readonly TemporaryFolder _disk = new();

    public GitFolder() => Git("init", "-q", "-b", "main");

    public TemporaryFolder Disk => _disk;

    public string Commit(string message = "state")
    {
        Git("add", "-A");
        Git("commit", "-q", "--allow-empty", "-m", message);
        return Git("rev-parse", "HEAD").Trim();
    }

    public string Git(params string[] arguments)
    {
        ProcessStartInfo start = new("git", ["-c", "user.name=A", "-c", "user.email=a@example.invalid", "-c", "commit.gpgsign=false", .. arguments])
        {
            WorkingDirectory = _disk.Path,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEnd();
        var error = process.StandardError.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, $"git {string.Join(' ', arguments)}: {error}");
        return output;
    }

    public void Dispose()
    {
        foreach (var file in new DirectoryInfo(_disk.Path).EnumerateFiles("*", SearchOption.AllDirectories))
        {
            // Git keeps its objects write-protected.
            file.Attributes = FileAttributes.Normal;
        }

        _disk.Dispose();
    }
}
