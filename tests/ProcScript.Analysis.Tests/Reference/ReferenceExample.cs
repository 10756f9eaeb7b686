using System.Collections.Immutable;
using System.Text;
using ProcScript.Model.Sources;

namespace ProcScript.Analysis.Tests.Reference;

/// <summary>A library that <c>grammar/LANGUAGE.md</c> gives as an example, by the convention that its opening states.</summary>
/// <param name="Section">The heading above it.</param>
/// <param name="Line">The line of its first block.</param>
/// <param name="Expected">The code that it is to get; empty for none.</param>
/// <param name="Files">The files.</param>
internal sealed record ReferenceExample(string Section, int Line, string Expected, ImmutableSortedDictionary<string, string> Files)
{
    private const string SectionFile = "section.proc";
    private const string WrongFile = "wrong.proc";
    private const string FileMark = "// file: ";

    public static string Text { get; } = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "grammar", "LANGUAGE.md"));

    public static ImmutableArray<ReferenceExample> All { get; } = [.. Collect()];

    public LibraryReport Check() => LibraryCheck.Run(new MemorySourceStore(Files));

    private static IEnumerable<ReferenceExample> Collect()
    {
        var blocks = Blocks().ToList();
        var shared = blocks
            .Where(block => block.Content.StartsWith(FileMark, StringComparison.Ordinal))
            .ToImmutableSortedDictionary(block => block.Content.Split('\n')[0][FileMark.Length..].Trim(), block => block.Content, StringComparer.Ordinal);
        foreach (var section in blocks.GroupBy(block => block.Section))
        {
            var own = new StringBuilder();
            foreach (var block in section.Where(block => block.Code.Length == 0 && !block.Content.StartsWith(FileMark, StringComparison.Ordinal)))
            {
                own.Append(block.Content).Append('\n');
            }

            var clean = shared.Add(SectionFile, own.ToString());
            yield return new ReferenceExample(section.Key, section.First().Line, "", clean);
            foreach (var wrong in section.Where(block => block.Code.Length > 0))
            {
                yield return new ReferenceExample(section.Key, wrong.Line, wrong.Code, clean.Add(WrongFile, wrong.Content));
            }
        }
    }

    private static IEnumerable<(string Section, int Line, string Code, string Content)> Blocks()
    {
        var section = "";
        var lines = Text.ReplaceLineEndings("\n").Split('\n');
        for (var i = 0; i < lines.Length; i++)
        {
            if (lines[i].StartsWith("## ", StringComparison.Ordinal))
            {
                section = lines[i][3..];
            }
            else if (lines[i].StartsWith("```proc", StringComparison.Ordinal))
            {
                var start = i + 1;
                var code = lines[i]["```proc".Length..].Trim();
                for (i = start; lines[i] != "```"; i++)
                {
                }

                yield return (section, start, code, string.Join('\n', lines[start..i]));
            }
        }
    }
}
