using System.Globalization;
using ProcScript.Cli.Tests.Malformed;

namespace ProcScript.Cli.Tests.Writing;

/// <summary>Sources that a verb has something to write about.</summary>
internal static class WritingSource
{
    private const string Blanks = "   ";
    private const string Notice = " notice \"Wipe it.\"\n";

    /// <summary>A source with a procedure of its own.</summary>
    /// <param name="verb">The verb.</param>
    /// <param name="i">The number of the source.</param>
    /// <param name="findings">Of how many findings it is where findings are what is written.</param>
    public static string Of(string verb, int i, int findings)
    {
        var text = Sample.Text.Replace("procedure p ", string.Create(CultureInfo.InvariantCulture, $"procedure p{i} "), StringComparison.Ordinal);
        return verb switch
        {
            "fix" => Mendable(text),
            "format" => Scattered(text),
            "cache" or "baseline" => WithParts(text, findings),
            _ => text,
        };
    }

    /// <summary>A source that both <c>fix</c> and <c>format</c> change.</summary>
    public static string ForBoth(int i) => Scattered(Of("fix", i, findings: 1));

    /// <summary>The same source at a later time, when one of its findings has been seen to.</summary>
    public static string Later(string verb, string source)
    {
        var (old, now) = verb == "build" ? ("The lower one first.", "The upper one first.") : (Misplaced(0), Placed(0));
        var at = source.IndexOf(old, StringComparison.Ordinal);
        return string.Concat(source.AsSpan(0, at), now, source.AsSpan(at + old.Length));
    }

    private static string Misplaced(int i) => Notice + Danger(i);

    private static string Placed(int i) => Danger(i) + Notice;

    // Each has words of its own, and so is a finding of its own wherever findings are written down.
    private static string Danger(int i) => string.Create(CultureInfo.InvariantCulture, $" danger \"It kills {i} ways. Stay away.\"\n");

    private static string Mendable(string text) => text.Replace("part pump \"pump\" {\n", $"part pump \"pump\" {{\n{Misplaced(0)}", StringComparison.Ordinal);

    private static string Scattered(string text) => text.Replace(" ", Blanks, StringComparison.Ordinal);

    /// <summary>With many parts that have something to tell about, so that there is much to write.</summary>
    private static string WithParts(string text, int count) => text.Replace(
        "part harness \"harness\"\n",
        "part harness \"harness\"\n" + string.Concat(Enumerable.Range(0, count).Select(i =>
            string.Create(CultureInfo.InvariantCulture, $"part lamp{i} \"lamp {i}\" {{\n{Misplaced(i)}}}\n"))),
        StringComparison.Ordinal);
}
