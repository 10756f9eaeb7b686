using System.Text;

namespace ProcScript.Cli.Tests.Malformed;

/// <summary>A library that nobody meant to write, and what a check of it must come to.</summary>
/// <param name="Name">What is odd about it.</param>
/// <param name="Code">What the run must end with: findings, clean where the input only looks wrong, or that it cannot be read.</param>
/// <param name="Files">The files by path.</param>
internal sealed record MalformedInput(string Name, ExitCode Code, params (string Path, byte[] Bytes)[] Files)
{
    public static MalformedInput Wrong(string name, string text) => new(name, ExitCode.Findings, ("a.proc", Encoding.UTF8.GetBytes(text)));

    /// <summary>Bytes that no text in UTF-8 has: the file cannot be read, which is no finding about its text.</summary>
    public static MalformedInput Unreadable(string name, byte[] bytes) => new(name, ExitCode.Usage, ("a.proc", bytes));

    public static MalformedInput Wrong(string name, byte[] bytes) => new(name, ExitCode.Findings, ("a.proc", bytes));

    public static MalformedInput Wrong(string name, params (string Path, string Text)[] files) =>
        new(name, ExitCode.Findings, [.. files.Select(file => (file.Path, Encoding.UTF8.GetBytes(file.Text)))]);

    public static MalformedInput Fine(string name, string text) => new(name, ExitCode.Clean, ("a.proc", Encoding.UTF8.GetBytes(text)));

    public static MalformedInput Fine(string name, byte[] bytes) => new(name, ExitCode.Clean, ("a.proc", bytes));
}
