using ProcScript.Analysis.Drafting;
using ProcScript.Model;
using ProcScript.Model.Sources;
using ProcScript.Syntax;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Formatting;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Tests.Drafting;

/// <summary>Drafts of single files, and what every drafted file is held to.</summary>
internal static class Drafting
{
    /// <summary>The file as it is drafted.</summary>
    public static string Drafted(string text)
    {
        var report = LibraryDraft.Run(MemorySourceStore.Of("a.proc", text), CheckSettings.Usual, new DraftRequest(), TestContext.Current.CancellationToken);
        return report.Files is [var file] ? file.After : text;
    }

    /// <summary>Laid out, without an error in its text, and with nothing left to draft.</summary>
    public static void AssertSettled(string text)
    {
        var tree = SyntaxTree.Parse(new SourceText("a.proc", text), TestContext.Current.CancellationToken);
        Assert.Equal([], tree.Findings.Select(finding => finding.Message));
        Assert.Equal(Formatter.Format(tree), text);
        Assert.Empty(LibraryDraft.Of(Bound(text), new DraftRequest()).Files);
    }

    /// <summary>The errors that a check finds.</summary>
    public static IEnumerable<string> Errors(string text) => LibraryCheck.Run(MemorySourceStore.Of("a.proc", text), TestContext.Current.CancellationToken)
        .Findings.Where(reported => reported.Severity == Severity.Error)
        .Select(reported => $"{reported.Finding.Rule.Code} {reported.Finding.Message}");

    public static Library Bound(string text) => LibraryBinder.Bind(MemorySourceStore.Of("a.proc", text), TestContext.Current.CancellationToken);
}
