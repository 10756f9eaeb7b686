using System.ComponentModel;
using System.Diagnostics;
using System.Text;

namespace ProcScript.Cli.Versions;

/// <summary>Runs Git as the user would, in a folder; it never asks, pages or colours.</summary>
/// <param name="folder">The folder, as a full path.</param>
internal sealed class GitProcess(string folder)
{
    private const string Missing = "Git is needed for that, and there is no 'git' on the PATH; install Git, or run it where Git is.";

    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Runs a command to its end.</summary>
    /// <exception cref="UsageException">Git is not there.</exception>
    public async Task<GitAnswer> RunAsync(IEnumerable<string> arguments, CancellationToken stop)
    {
        using var process = Start(arguments);
        process.StandardInput.Close();
        using var kill = stop.Register(() => Kill(process));
        using MemoryStream output = new();
        var error = process.StandardError.ReadToEndAsync(CancellationToken.None);
        await process.StandardOutput.BaseStream.CopyToAsync(output, CancellationToken.None);
        var complaint = await error;
        await process.WaitForExitAsync(CancellationToken.None);
        stop.ThrowIfCancellationRequested();
        return new GitAnswer(process.ExitCode, output.ToArray(), complaint.Trim());
    }

    private Process Start(IEnumerable<string> arguments)
    {
        ProcessStartInfo start = new("git", ["-C", folder, "--no-pager", .. arguments])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardErrorEncoding = Utf8,
        };
        // A run that only reads takes no locks that another one waits for, and says what it says in one language.
        start.Environment["GIT_OPTIONAL_LOCKS"] = "0";
        start.Environment["GIT_TERMINAL_PROMPT"] = "0";
        start.Environment["LC_ALL"] = "C";

        try
        {
            return Process.Start(start) ?? throw new UsageException(Missing);
        }
        catch (Win32Exception)
        {
            throw new UsageException(Missing);
        }
    }

    private static void Kill(Process process)
    {
        try
        {
            process.Kill(entireProcessTree: true);
        }
        catch (Exception failure) when (failure is InvalidOperationException or Win32Exception)
        {
            // It has ended by itself.
        }
    }
}

/// <summary>What Git answered.</summary>
/// <param name="Code">Its exit code.</param>
/// <param name="Output">Its output.</param>
/// <param name="Complaint">What it said on the error stream.</param>
internal sealed record GitAnswer(int Code, byte[] Output, string Complaint)
{
    /// <summary>Whether it did what it was asked.</summary>
    public bool Succeeded => Code == 0;

    /// <summary>The output as one line.</summary>
    public string Line => Encoding.UTF8.GetString(Output).TrimEnd('\n', '\r');

    /// <summary>The output as names that end in a zero: any name comes through as it is.</summary>
    public IEnumerable<string> Names => Encoding.UTF8.GetString(Output).Split('\0', StringSplitOptions.RemoveEmptyEntries);
}
