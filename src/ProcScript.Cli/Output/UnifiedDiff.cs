using System.Globalization;
using DiffPlex;
using DiffPlex.Model;
using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Output;

/// <summary>Shows how a file comes out, in the form that reviewers read and that <c>git apply</c> and <c>patch -p1</c> take.</summary>
internal static class UnifiedDiff
{
    private const int Around = 3;

    /// <summary>Writes the lines that go and come, with those around them; a text differs where a byte does.</summary>
    /// <param name="terminal">Where to.</param>
    /// <param name="paths">How files are named to the user.</param>
    /// <param name="path">The file.</param>
    /// <param name="before">Its text.</param>
    /// <param name="after">The text that it comes out with.</param>
    public static void Write(Terminal terminal, ScreenPaths paths, string path, string before, string after)
    {
        var mark = paths.MarkOf(path);
        var name = paths.Exact(path);
        Write(terminal, Name("a/", name), Name("b/", name), mark + before, mark + after);
    }

    /// <summary>Writes the lines of a file that is not there yet.</summary>
    /// <param name="terminal">Where to.</param>
    /// <param name="name">What it would be called.</param>
    /// <param name="text">Its text.</param>
    public static void WriteNew(Terminal terminal, string name, string text) => Write(terminal, "/dev/null", Name("b/", name), "", text);

    private static void Write(Terminal terminal, string from, string to, string before, string after)
    {
        var diff = Differ.Instance.CreateDiffs(before, after, ignoreWhiteSpace: false, ignoreCase: false, new LineChunker());
        terminal.WriteExact($"--- {from}", Ink.Strong);
        terminal.WriteExact($"+++ {to}", Ink.Strong);
        for (var i = 0; i < diff.DiffBlocks.Count;)
        {
            var end = i + 1;
            while (end < diff.DiffBlocks.Count && diff.DiffBlocks[end].DeleteStartA - EndOf(diff.DiffBlocks[end - 1]) <= 2 * Around)
            {
                end++;
            }

            WriteHunk(terminal, diff, [.. diff.DiffBlocks.Skip(i).Take(end - i)]);
            i = end;
        }
    }

    private static int EndOf(DiffBlock block) => block.DeleteStartA + block.DeleteCountA;

    private static void WriteHunk(Terminal terminal, DiffResult diff, DiffBlock[] blocks)
    {
        var start = Math.Max(0, blocks[0].DeleteStartA - Around);
        var end = Math.Min(diff.PiecesOld.Count, EndOf(blocks[^1]) + Around);
        var shift = blocks[0].InsertStartB - blocks[0].DeleteStartA;
        var come = end - start + blocks.Sum(block => block.InsertCountB - block.DeleteCountA);
        terminal.WriteExact($"@@ -{Lines(start, end - start)} +{Lines(start + shift, come)} @@", Ink.Frame);
        var at = start;
        foreach (var block in blocks)
        {
            WriteLines(terminal, ' ', diff.PiecesOld, at, block.DeleteStartA, Ink.Plain);
            WriteLines(terminal, '-', diff.PiecesOld, block.DeleteStartA, EndOf(block), Ink.Removed);
            WriteLines(terminal, '+', diff.PiecesNew, block.InsertStartB, block.InsertStartB + block.InsertCountB, Ink.Added);
            at = EndOf(block);
        }

        WriteLines(terminal, ' ', diff.PiecesOld, at, end, Ink.Plain);
    }

    // Of no lines, the line before them is named.
    private static string Lines(int start, int count) => string.Create(CultureInfo.InvariantCulture, $"{(count == 0 ? start : start + 1)},{count}");

    private static void WriteLines(Terminal terminal, char mark, IReadOnlyList<string> lines, int start, int end, Ink ink)
    {
        for (var i = start; i < end; i++)
        {
            terminal.WriteExact(mark + (lines[i].EndsWith('\n') ? lines[i][..^1] : lines[i]), ink);
            if (!lines[i].EndsWith('\n'))
            {
                terminal.WriteExact("\\ No newline at end of file", Ink.Plain);
            }
        }
    }

    /// <summary>A name is quoted where its characters could be taken for something else.</summary>
    private static string Name(string prefix, string path) => path.Any(letter => letter is '"' or '\\' || char.IsControl(letter))
        ? $"\"{prefix}{string.Concat(path.Select(Quoted))}\""
        : prefix + path;

    private static string Quoted(char letter) =>
        letter is '"' or '\\' ? $"\\{letter}" : char.IsControl(letter) ? $"\\{Convert.ToString(letter, 8).PadLeft(3, '0')}" : $"{letter}";

    /// <summary>Lines with their ends, which differ where the lines do not.</summary>
    private sealed class LineChunker : IChunker
    {
        public IReadOnlyList<string> Chunk(string text)
        {
            var lines = new List<string>();
            for (var at = 0; at < text.Length;)
            {
                var end = text.IndexOf('\n', at);
                end = end < 0 ? text.Length : end + 1;
                lines.Add(text[at..end]);
                at = end;
            }

            return lines;
        }
    }
}
