using System.Collections.Immutable;
using ProcScript.Analysis.Mending;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Tests.Mending;

/// <summary>A library whose findings are made up by a test: every place of a word is one, with a fix that writes another word.</summary>
internal static class MadeUpFixes
{
    /// <summary>A rule that finds a word and would have another.</summary>
    public sealed record WordRule(string Code, string Finds, string Writes, FixGrade Grade = FixGrade.Safe);

    public static MendReport Mend(string text, MendRequest request, params WordRule[] rules) => Mend([("x.proc", text)], request, rules);

    /// <summary>The words are found in the first file.</summary>
    public static MendReport Mend((string Path, string Text)[] files, MendRequest request, params WordRule[] rules)
    {
        MendSource source = new(new MemorySourceStore(files.Select(file => KeyValuePair.Create(file.Path, file.Text))));
        var text = files[0].Text;
        return LibraryMend.Run(source, request, edited =>
        {
            var report = LibraryCheck.Run(source.With(edited));
            var content = edited.GetValueOrDefault("x.proc", text);
            return report with
            {
                Findings = [.. report.Findings.Concat(rules.SelectMany(rule => Find(content, rule))).OrderBy(found => found.Finding.Primary.Span.Start)],
            };
        });
    }

    private static IEnumerable<ReportedFinding> Find(string text, WordRule rule)
    {
        for (var at = text.IndexOf(rule.Finds, StringComparison.Ordinal); at >= 0; at = text.IndexOf(rule.Finds, at + rule.Finds.Length, StringComparison.Ordinal))
        {
            SourceSpan place = new("x.proc", new TextSpan(at, rule.Finds.Length));
            RuleInfo info = new(rule.Code, "made-up-" + rule.Code, "Made up", Severity.Warning);
            Finding finding = new(info, $"there is a {rule.Finds}", place)
            {
                Fixes = [new Fix($"Write {rule.Writes}", rule.Grade, [new TextEdit(place, rule.Writes)])],
            };
            yield return new ReportedFinding(finding, Severity.Warning);
        }
    }
}
