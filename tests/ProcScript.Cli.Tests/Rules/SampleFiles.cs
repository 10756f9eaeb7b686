using ProcScript.Model.Sources;

namespace ProcScript.Cli.Tests.Rules;

/// <summary>The files of a sample on a rule's page: one of sources, or those that lines <c>// file: name</c> begin.</summary>
internal static class SampleFiles
{
    private const string Begin = "// file: ";

    public static MemorySourceStore Of(string sample)
    {
        var files = new List<(string Path, List<string> Lines)>();
        foreach (var line in sample.ReplaceLineEndings("\n").Split('\n'))
        {
            if (line.StartsWith(Begin, StringComparison.Ordinal))
            {
                files.Add((line[Begin.Length..].Trim(), []));
                continue;
            }

            if (files.Count == 0)
            {
                files.Add(("sample.proc", []));
            }

            files[^1].Lines.Add(line);
        }

        return new MemorySourceStore(files.Select(file => KeyValuePair.Create(file.Path, string.Join('\n', file.Lines))));
    }
}
