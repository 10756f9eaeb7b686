using System.Diagnostics;

namespace ProcScript.Generate;

/// <summary>The manual page, as the program itself prints it from the commands that it reads its arguments by.</summary>
internal sealed class ManualGenerator : IGenerator
{
    private const string Project = "src/ProcScript.Cli";

    public string Name => "manual";

    public string? OwnedFolder => null;

    public IReadOnlyList<GeneratedFile> Generate(string root)
    {
        ProcessStartInfo start = new("dotnet")
        {
            ArgumentList = { "run", "--project", Project, "--verbosity", "quiet", "--", "manual" },
            WorkingDirectory = root,
            RedirectStandardOutput = true,
        };
        using var program = Process.Start(start) ?? throw new GenerationException("'dotnet' did not start.");
        var page = program.StandardOutput.ReadToEnd();
        program.WaitForExit();
        return program.ExitCode == 0
            ? [new GeneratedFile("src/packaging/procscript.1", page)]
            : throw new GenerationException($"{Project} did not print its manual.\n{page}");
    }
}
