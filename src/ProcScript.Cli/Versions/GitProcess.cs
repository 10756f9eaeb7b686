using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
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
    public Task<GitAnswer> RunAsync(IEnumerable<string> arguments, CancellationToken stop) => RunAsync(arguments, input: "", stop);

    /// <summary>Runs a command that reads, to its end.</summary>
    /// <exception cref="UsageException">Git is not there.</exception>
    public async Task<GitAnswer> RunAsync(IEnumerable<string> arguments, string input, CancellationToken stop)
    {
        using var process = Start(arguments);
        // It answers while it reads: whoever wrote first and read then would wait for ever.
        var writing = WriteAsync(process, input);
        using var kill = stop.Register(() => Kill(process));
        using MemoryStream output = new();
        var error = process.StandardError.ReadToEndAsync(CancellationToken.None);
        await process.StandardOutput.BaseStream.CopyToAsync(output, CancellationToken.None);
        var complaint = await error;
        await writing;
        await process.WaitForExitAsync(CancellationToken.None);
        stop.ThrowIfCancellationRequested();
        return new GitAnswer(process.ExitCode, output.ToArray(), complaint.Trim());
    }

    private static async Task WriteAsync(Process process, string input)
    {
        try
        {
            await process.StandardInput.WriteAsync(input);
            process.StandardInput.Close();
        }
        catch (IOException)
        {
            // It has ended without reading on; what it says on the error stream tells why.
        }
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

    /// <summary>What <c>cat-file --batch</c> writes: of each object a line that ends in its size, then its bytes and a line break.</summary>
    public static IEnumerable<byte[]> Objects(byte[] output)
    {
        for (var at = 0; at < output.Length;)
        {
            var end = Array.IndexOf(output, (byte)'\n', at);
            var header = Encoding.ASCII.GetString(output, at, end - at).Split(' ');
            if (header is not [_, "blob", var digits])
            {
                yield break;
            }

            var size = int.Parse(digits, CultureInfo.InvariantCulture);
            yield return output[(end + 1)..(end + 1 + size)];
            at = end + size + 2;
        }
    }

    /// <summary>The output as names that end in a zero: any name comes through as it is.</summary>
    public IEnumerable<string> Names => Encoding.UTF8.GetString(Output).Split('\0', StringSplitOptions.RemoveEmptyEntries);
}
