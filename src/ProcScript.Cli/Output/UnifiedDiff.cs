using DiffPlex.Renderer;

namespace ProcScript.Cli.Output;

/// <summary>Shows how a file comes out, in the form that <c>patch</c> and reviewers read.</summary>
internal static class UnifiedDiff
{
    /// <summary>Writes the lines that go and come, with those around them.</summary>
    /// <param name="terminal">Where to.</param>
    /// <param name="path">How the file is named to the user.</param>
    /// <param name="before">Its text.</param>
    /// <param name="after">The text that it comes out with.</param>
    public static void Write(Terminal terminal, string path, string before, string after)
    {
        // The renderer takes the end of the last line for a line of its own.
        var diff = UnidiffRenderer.GenerateUnidiff(WithoutEnd(before), WithoutEnd(after), path, path);
        foreach (var line in diff.ReplaceLineEndings("\n").TrimEnd('\n').Split('\n'))
        {
            terminal.WriteLine(new Piece(PrintableText.Of(line), InkOf(line)));
        }
    }

    private static string WithoutEnd(string text) => text.EndsWith('\n') ? text[..^1] : text;

    private static Ink InkOf(string line) => line switch
    {
        ['+', '+', '+', ..] or ['-', '-', '-', ..] => Ink.Strong,
        ['+', ..] => Ink.Added,
        ['-', ..] => Ink.Removed,
        ['@', ..] => Ink.Frame,
        _ => Ink.Plain,
    };
}
