namespace ProcScript.Generate;

/// <summary>One run over the chosen generators, reported line by line.</summary>
/// <param name="root">The repository's root.</param>
/// <param name="check">Compare only, and fail on a difference.</param>
internal sealed class GenerateRun(string root, bool check)
{
    private const string Again = "dotnet run --project src/ProcScript.Generate";

    /// <summary>Runs the generators and returns the exit code: 0 when all is well, 1 otherwise.</summary>
    public int Run(IEnumerable<IGenerator> generators)
    {
        var failed = false;
        foreach (var generator in generators)
        {
            failed |= !Run(generator);
        }

        return failed ? 1 : 0;
    }

    private bool Run(IGenerator generator)
    {
        try
        {
            var files = generator.Generate(root);
            if (files.Count == 0)
            {
                throw new GenerationException("it made no file.");
            }

            var differences = GeneratedFiles.Differences(root, generator, files);
            foreach (var path in differences)
            {
                Console.WriteLine(check ? $"{generator.Name}: {path} is out of date: run '{Again}'" : $"{generator.Name}: {path}");
            }

            if (!check)
            {
                GeneratedFiles.Write(root, generator, files);
            }

            Console.WriteLine($"{generator.Name}: {files.Count} files, {differences.Count} {(check ? "out of date" : "updated")}");
            return !check || differences.Count == 0;
        }
        catch (GenerationException failure)
        {
            Console.Error.WriteLine($"{generator.Name}: {failure.Message}");
            return false;
        }
    }
}
