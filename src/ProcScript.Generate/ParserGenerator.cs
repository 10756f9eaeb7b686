using System.Diagnostics;

namespace ProcScript.Generate;

/// <summary>The lexer and parser that ANTLR makes from <c>grammar/*.g4</c>.</summary>
internal sealed class ParserGenerator : IGenerator
{
    private const string Project = "grammar/ProcScript.Grammar.csproj";

    public string Name => "parser";

    public string? OwnedFolder => "src/ProcScript.Syntax/Generated";

    public IReadOnlyList<GeneratedFile> Generate(string root)
    {
        var output = Directory.CreateTempSubdirectory("procscript-parser-");
        try
        {
            Build(root, output.FullName);
            return
            [
                .. output.EnumerateFiles("*.cs")
                    .OrderBy(file => file.Name, StringComparer.Ordinal)
                    .Select(file => new GeneratedFile($"{OwnedFolder}/{file.Name}", File.ReadAllText(file.FullName))),
            ];
        }
        finally
        {
            output.Delete(recursive: true);
        }
    }

    private static void Build(string root, string output)
    {
        ProcessStartInfo start = new("dotnet")
        {
            ArgumentList = { "build", Project, "--nologo", "--verbosity", "quiet", $"-p:ParserFolder={output}/" },
            WorkingDirectory = root,
            RedirectStandardOutput = true,
        };
        using var build = Process.Start(start) ?? throw new GenerationException("'dotnet' did not start.");
        var log = build.StandardOutput.ReadToEnd();
        build.WaitForExit();
        if (build.ExitCode != 0)
        {
            throw new GenerationException($"{Project} did not build; it needs java and npm.\n{log}");
        }
    }
}
