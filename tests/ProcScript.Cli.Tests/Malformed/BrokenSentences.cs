namespace ProcScript.Cli.Tests.Malformed;

/// <summary>Texts that are no sentences of the language.</summary>
internal static class BrokenSentences
{
    public static IEnumerable<MalformedInput> All =>
    [
        MalformedInput.Wrong("one brace that opens", "{"),
        MalformedInput.Wrong("one brace that closes", "}"),
        MalformedInput.Wrong("a thousand braces that close", new string('}', 1000)),
        MalformedInput.Wrong("ten thousand braces that open", new string('{', 10_000)),
        MalformedInput.Wrong("everything left open", "machine m \"M\" { part a \"A\" { held by 4 m8 as b { at \"x"),
        MalformedInput.Wrong("the second half missing", Sample.Text[..(Sample.Text.Length / 2)]),
        MalformedInput.Wrong("the first half missing", Sample.Text[(Sample.Text.Length / 2)..]),
        MalformedInput.Wrong("every second line missing", string.Join('\n', Sample.Text.Split('\n').Where((_, i) => i % 2 == 0))),
        MalformedInput.Wrong("the lines backwards", string.Join('\n', Sample.Text.Split('\n').Reverse())),
        MalformedInput.Wrong("the text backwards", new string([.. Sample.Text.Replace('±', ' ').Reverse()])),
        MalformedInput.Wrong("a text that is not closed", Sample.Text + "tool t \"not closed\n"),
        MalformedInput.Wrong("a text that ends in a backslash", Sample.Text + "tool t \"not closed\\"),
        MalformedInput.Wrong("a comment of another language", "/* tool */ # tool\n-- tool"),
        MalformedInput.Wrong("another language", "<html><body class=\"x\">Hello, world!</body></html>"),
        MalformedInput.Wrong("prose", "Take the seat out. Then undo the four bolts."),
        MalformedInput.Wrong("the words of the language and nothing else", string.Join('\n', Words)),
        MalformedInput.Wrong("words of the language as names", string.Join('\n', Words.Select(word => $"tool {word} \"T\" machine {word} \"M\" {{ part {word} \"P\" }}"))),
        MalformedInput.Wrong("ten thousand parts in each other", Nested("part p{0} \"P\" {{", "}}")),
        MalformedInput.Wrong("ten thousand loops in each other", Nested("each v{0} in a, b {{", "}}")),
        MalformedInput.Wrong("ten thousand conditions in each other", Nested("when o{0} {{", "}}")),
        MalformedInput.Wrong("ten thousand blocks of refit in each other", Sample.Steps("remove cover " + string.Concat(Enumerable.Repeat("{ refit ", 10_000)))),
        MalformedInput.Wrong("ten thousand brackets", Sample.Steps("remove cover" + new string('[', 10_000))),
        MalformedInput.Wrong("braces in a text", Sample.Steps("task \"{ {} {{ }} {unknown} {\"")),
        MalformedInput.Wrong("odd escapes in a text", Sample.Steps("remove x { how \"\\q \\u0041 \\x \\\\ \\\" \\n\" }")),
        MalformedInput.Wrong("a merge conflict", "<<<<<<< HEAD\n" + Sample.Text + "=======\n" + Sample.Text + ">>>>>>> branch\n"),
    ];

    private static readonly string[] Words =
    [
        "use", "tool", "supply", "fastener", "machine", "procedure", "option", "part", "held", "wired", "piped", "by", "as", "covered",
        "each", "when", "is", "not", "goal", "stage", "do", "work", "undo", "remove", "strip", "refit", "before", "after", "discard", "because",
    ];

    private static string Nested(string open, string close)
    {
        var levels = Enumerable.Range(0, 10_000).ToList();
        var all = string.Join('\n', levels.Select(level => string.Format(System.Globalization.CultureInfo.InvariantCulture, open, level)));
        return $"machine m \"M\" {{\n{all}\n{string.Concat(Enumerable.Repeat(close.Replace("}}", "}", StringComparison.Ordinal), levels.Count))}\n}}\n";
    }
}
