using System.Collections.Immutable;
using System.Text;
using ProcScript.Model.Sources;

namespace ProcScript.Analysis.Tests.Reference;

/// <summary>A library that a page of <c>grammar</c> gives as an example, by the convention that the opening of <c>LANGUAGE.md</c> states.</summary>
/// <param name="Page">The page.</param>
/// <param name="Section">The heading above it.</param>
/// <param name="Line">The line of its first block.</param>
/// <param name="Expected">The code that it is to get; empty for none.</param>
/// <param name="Files">The files.</param>
internal sealed record ReferenceExample(string Page, string Section, int Line, string Expected, ImmutableSortedDictionary<string, string> Files)
{
    private const string SectionFile = "section.proc";
    private const string WrongFile = "wrong.proc";
    private const string FileMark = "// file: ";

    /// <summary>The language reference.</summary>
    public static string Language { get; } = Read("LANGUAGE.md");

    /// <summary>The page of rules and settings.</summary>
    public static string Rules { get; } = Read("RULES.md");

    /// <summary>The examples of the reference, and of the guide for a first machine.</summary>
    public static ImmutableArray<ReferenceExample> All { get; } =
        [.. Collect("LANGUAGE.md", Language), .. Collect("FIRST-MACHINE.md", Read("FIRST-MACHINE.md"))];

    public LibraryReport Check() => LibraryCheck.Run(new MemorySourceStore(Files));

    private static string Read(string page) => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "grammar", page));

    private static IEnumerable<ReferenceExample> Collect(string page, string text)
    {
        var blocks = Blocks(text).ToList();
        var shared = blocks
            .Where(block => block.Content.StartsWith(FileMark, StringComparison.Ordinal))
            .ToImmutableSortedDictionary(block => block.Content.Split('\n')[0][FileMark.Length..].Trim(), block => ContentOf(block.Content), StringComparer.Ordinal);
        foreach (var section in blocks.GroupBy(block => block.Section))
        {
            var own = new StringBuilder();
            foreach (var block in section.Where(block => block.Code.Length == 0 && !block.Content.StartsWith(FileMark, StringComparison.Ordinal)))
            {
                own.Append(block.Content).Append('\n');
            }

            var clean = shared.Add(SectionFile, own.ToString());
            if (section.Any(block => block.Code.Length == 0))
            {
                yield return new ReferenceExample(page, section.Key, section.First().Line, "", clean);
            }

            foreach (var wrong in section.Where(block => block.Code.Length > 0))
            {
                yield return new ReferenceExample(page, section.Key, wrong.Line, wrong.Code, clean.Add(WrongFile, wrong.Content));
            }
        }
    }

    /// <summary>What stands in the file. A comment begins a source well; a picture it would not.</summary>
    private static string ContentOf(string block) => block.Split('\n', 2) is [var first, var rest] && !first.EndsWith(".proc", StringComparison.Ordinal) ? rest : block;

    private static IEnumerable<(string Section, int Line, string Code, string Content)> Blocks(string text)
    {
        var section = "";
        var lines = text.ReplaceLineEndings("\n").Split('\n');
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
