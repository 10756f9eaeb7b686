using ProcScript.Analysis;
using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Cli.Tests.Output;

/// <summary>A few files in memory, findings on them, and what is printed.</summary>
internal sealed class Printed
{
    private static readonly RuleInfo Rule = new("PRC9999", "made-up", "A rule of this test", Severity.Error);

    private readonly Dictionary<string, SourceText> _files;

    public Printed(params (string Path, string Content)[] files)
    {
        _files = files.ToDictionary(file => file.Path, file => new SourceText(file.Path, file.Content));
    }

    /// <summary>A finding at the first place where <paramref name="words"/> stand.</summary>
    public Finding At(string path, string words, string message, string label = "") => new(Rule, message, Span(path, words), label);

    /// <summary>Another place with its label.</summary>
    public LabeledSpan Related(string path, string words, string label) => new(Span(path, words), label);

    public SourceSpan Span(string path, string words)
    {
        var start = _files[path].Content.IndexOf(words, StringComparison.Ordinal);
        Assert.True(start >= 0, $"'{words}' is not in {path}");
        return new SourceSpan(path, new TextSpan(start, words.Length));
    }

    /// <summary>What is printed, without the empty line at the end.</summary>
    public string Print(Finding finding, Severity severity = Severity.Error, ColourChoice colour = ColourChoice.Never)
    {
        var output = new StringWriter();
        var around = InMemory.Surroundings("/library", output);
        var selection = new SourceSelection("/library", [.. _files.Keys.Order(StringComparer.Ordinal)], StandardInput: null);
        var printer = new FindingPrinter(
            Terminal.For(around, colour),
            path => _files.GetValueOrDefault(path),
            new ScreenPaths(selection, around.CurrentFolder));
        printer.Print(new ReportedFinding(finding, severity));
        var text = output.ToString();
        Assert.EndsWith("\n\n", text, StringComparison.Ordinal);
        return text[..^2];
    }
}
