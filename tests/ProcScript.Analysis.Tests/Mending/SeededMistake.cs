using System.Collections.Immutable;
using System.Text.RegularExpressions;
using ProcScript.Analysis.Tests.Demo;

namespace ProcScript.Analysis.Tests.Mending;

/// <summary>One mistake in one file of the demo library.</summary>
/// <param name="Kind">What was done wrong.</param>
/// <param name="Path">The file.</param>
/// <param name="Line">The line, counted from 1.</param>
/// <param name="Text">The file with the mistake.</param>
internal sealed record SeededMistake(string Kind, string Path, int Line, string Text)
{
    private static readonly int OfEachKind = Depth.Of(16, few: 2);

    /// <summary>Some of each kind, spread over the library.</summary>
    public static ImmutableArray<SeededMistake> Some { get; } =
    [
        .. Spread(Replacing("misspelt name", @"(?<=(?:release|undo|unplug|remove|aside|loosen|isolate|support|empty|set|to|on|carries|behind) )[a-z]{4,}_?[a-z]*", DropALetter)),
        .. Spread(Replacing("misspelt value", @"(?<=each \w+ in .*)(?:left|right)(?=[, {])", DropALetter)),
        .. Spread(Replacing("misspelt argument", @"(?<=do \w+\()\w+", DropALetter)),
        .. Spread(Replacing("misspelt kind", @"(?<=(?:held|wired|piped) by \d+ )[a-z]\w+", DropALetter)),
        .. Spread(Replacing("misspelt keyword", @"^ +(?:release|undo|remove|part|stage|wired|held)(?= )", DropALetter)),
        .. Spread(Replacing("lost energy or fluid", @" +(?:on|carries) \w+", _ => "")),
        .. Spread(Replacing("lost condition", @"^ +(?:strip |refit )?needs [^{}]*$", _ => "")),
        .. Spread(Replacing("lost brace", @"[{}]$", _ => "")),
        .. Spread(Replacing("lost step", @"^ +(?:release|undo|unplug|remove|aside|isolate|support|empty) [^{}]*$", _ => "")),
        .. Spread(Replacing("step twice", @"^ +(?:release|undo|isolate|support|empty) [^{}]*$", line => $"{line}\n{line}")),
        .. Spread(Replacing("doubled brace", @"^ *}$", line => $"{line}\n{line}")),
        .. Spread(Replacing("swapped lines", @"^ +[a-z][^\n]*\n +[a-z][^\n]*$", lines => string.Join('\n', lines.Split('\n').Reverse()))),
        .. Spread(Replacing("lost use", @"^use .*$", _ => "")),
        .. Spread(Replacing("lost line below a comment", @"(?<=^ *// proc: allow .*\n)^.*$", _ => "")),
    ];

    /// <summary>The files that can come out otherwise, with the mistake.</summary>
    public IEnumerable<KeyValuePair<string, string>> Files =>
        DemoLibrary.FilesThatConcern(Path).Select(file => file.Key == Path ? KeyValuePair.Create(Path, Text) : file);

    /// <inheritdoc/>
    public override string ToString() => $"{Kind} in {Path}:{Line}";

    private static IEnumerable<SeededMistake> Replacing(string kind, string pattern, Func<string, string> wrong) =>
        from file in DemoLibrary.Files
        where DemoLibrary.FilesThatConcern(file.Key).Any()
        from match in Regex.Matches(file.Value, pattern, RegexOptions.Multiline)
        let text = file.Value.Remove(match.Index, match.Length).Insert(match.Index, wrong(match.Value))
        select new SeededMistake(kind, file.Key, file.Value.AsSpan(0, match.Index).Count('\n') + 1, text);

    private static IEnumerable<SeededMistake> Spread(IEnumerable<SeededMistake> mistakes)
    {
        var all = mistakes.ToList();
        Assert.NotEmpty(all);
        return Enumerable.Range(0, Math.Min(OfEachKind, all.Count)).Select(i => all[i * all.Count / Math.Min(OfEachKind, all.Count)]);
    }

    private static string DropALetter(string word) => word.Remove(word.Length - 2, 1);
}
