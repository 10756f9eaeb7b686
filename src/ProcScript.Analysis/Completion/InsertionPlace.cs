using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Completion;

/// <summary>A place between the words of a text where lines can go.</summary>
/// <param name="Path">The file.</param>
/// <param name="At">The offset.</param>
/// <param name="Gap">What divides a line from its neighbours there.</param>
/// <param name="IsBehind">Whether the lines follow what stands there, instead of going before it.</param>
/// <param name="StageTitle">The title of the stage that the lines make up there; null where they stand in a stage.</param>
internal sealed record InsertionPlace(string Path, int At, string Gap, bool IsBehind, string? StageTitle = null)
{
    /// <summary>The text that brings some lines there.</summary>
    public string Join(IEnumerable<VariantLines> groups)
    {
        var written = groups.SelectMany(group => Write(group).AsEnumerable());
        if (StageTitle is { } title)
        {
            written = Block($"stage \"{TextQuotes.Escaped(title)}\"", [.. written]);
        }

        return string.Concat(IsBehind ? written.Select(line => Gap + line) : written.Select(line => line + Gap));
    }

    /// <summary>The empty stretch at the place.</summary>
    public SourceSpan Span => new(Path, new TextSpan(At, 0));

    private ImmutableArray<string> Write(VariantLines group)
    {
        var lines = group.Lines;
        foreach (var test in group.Tests.Reverse())
        {
            lines = Block($"when {test}", lines);
        }

        return lines;
    }

    /// <summary>A block on lines of its own; within one where it holds but one, or its neighbours stand in one.</summary>
    private ImmutableArray<string> Block(string head, ImmutableArray<string> lines) => lines.Length > 1 && Gap.Contains('\n', StringComparison.Ordinal)
        ? [$"{head} {{", .. lines.Select(line => "  " + line), "}"]
        : [$"{head} {{ {string.Join("  ", lines)} }}"];
}
