using System.ComponentModel;
using System.Diagnostics;

namespace ProcScript.Cli.Companions;

/// <summary>A program of its own that this one starts where it is there, and is no larger for it.</summary>
internal static class CompanionProgram
{
    /// <summary>Finds it beside this program, or on the PATH.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="what">What needs it, as it is typed.</param>
    /// <param name="around">The surroundings.</param>
    /// <returns>Its full path.</returns>
    /// <exception cref="UsageException">It is not there.</exception>
    public static string Find(string name, string what, Surroundings around)
    {
        var file = OperatingSystem.IsWindows() ? $"{name}.exe" : name;
        var folders = (around.Variable("PATH") ?? "").Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries).Where(Path.IsPathFullyQualified);
        return folders.Prepend(AppContext.BaseDirectory).Select(folder => Path.Combine(folder, file)).FirstOrDefault(File.Exists)
            ?? throw new UsageException($"{what} needs {name}, a tool of its own, and there is none on the PATH: get it with 'dotnet tool install -g {name}' where you got procscript.");
    }

    /// <summary>Starts it.</summary>
    /// <param name="start">How.</param>
    /// <exception cref="UsageException">It cannot be started.</exception>
    public static Process Start(ProcessStartInfo start)
    {
        try
        {
            return Process.Start(start) ?? throw new UsageException($"{start.FileName} cannot be started.");
        }
        catch (Win32Exception failure)
        {
            throw new UsageException($"{start.FileName} cannot be started: {failure.Message}");
        }
    }
}
