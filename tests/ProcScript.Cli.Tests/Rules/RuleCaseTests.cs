using ProcScript.Analysis;
using ProcScript.Cli.Tests.Cases;
using ProcScript.Syntax.Findings;

namespace ProcScript.Cli.Tests.Rules;

/// <summary>The cases of every rule: it fires where it should, stays quiet where it nearly would, and mends what it says it mends.</summary>
public sealed class RuleCaseTests
{
    /// <summary>
    /// A file beyond the limit has no place in a repository; <see cref="Malformed.MalformedInputTests"/> writes one. A baseline is not
    /// part of a library; <see cref="Verbs.BaselineVerbTests"/> writes some. What was otherwise in an earlier state of a library is not in
    /// its files; <see cref="Versions.DiffVerbTests"/> has two states.
    /// </summary>
    private static readonly string[] Elsewhere = ["PRC1007", "PRC5095", "PRC5096", "PRC7031"];

    public static TheoryData<string> Codes => [.. RuleCatalog.All.Select(rule => rule.Info.Code).Except(Elsewhere)];

    [Theory]
    [MemberData(nameof(Codes))]
    public void It_fires_in_each_of_its_firing_cases(string code)
    {
        Assert.NotEmpty(Case.OfRule(code, "fires"));
        Assert.All(Case.OfRule(code, "fires"), found => Assert.NotEmpty(FindingsOf(code, Library.Of(found))));
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void It_stays_quiet_in_each_near_miss(string code)
    {
        Assert.NotEmpty(Case.OfRule(code, "quiet"));
        Assert.All(Case.OfRule(code, "quiet"), found => Assert.Empty(FindingsOf(code, Library.Of(found))));
    }

    [Fact]
    public void Every_folder_of_rule_cases_belongs_to_a_rule()
    {
        var folders = Directory.EnumerateDirectories(Path.Combine(Checkout.Cases, "rules")).Select(Path.GetFileName);

        Assert.Empty(folders.Except(RuleCatalog.All.Select(rule => rule.Info.Code)));
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void It_offers_fixes_as_often_as_it_says(string code)
    {
        var findings = Case.OfRule(code, "fires").SelectMany(found => FindingsOf(code, Library.Of(found))).ToList();
        switch (RuleCatalog.Find(code)!.Info.Fix)
        {
            case FixAvailability.Never:
                Assert.All(findings, finding => Assert.Empty(finding.Fixes));
                break;
            case FixAvailability.Sometimes:
                Assert.Contains(findings, finding => !finding.Fixes.IsEmpty);
                break;
            default:
                Assert.All(findings, finding => Assert.NotEmpty(finding.Fixes));
                break;
        }
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void Each_fix_gives_a_text_without_that_finding(string code)
    {
        foreach (var library in Case.OfRule(code, "fires").Select(Library.Of))
        {
            var findings = FindingsOf(code, library).ToList();
            var unreadable = library.Check().Count(IsOfText);
            foreach (var fix in findings.SelectMany(finding => finding.Fixes).Where(Library.IsApplied))
            {
                var mended = library.With(fix).Check().ToList();

                Assert.True(mended.Count(IsOfText) <= unreadable, $"'{fix.Title}' leaves a text that does not parse.");
                Assert.True(mended.Count(finding => finding.Rule.Code == code) < findings.Count, $"'{fix.Title}' leaves the finding.");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void Its_fixes_come_to_an_end_in_the_fixed_case(string code)
    {
        foreach (var found in Case.OfRule(code, "fires"))
        {
            var library = Library.Of(found);
            var steps = 0;
            while (FindingsOf(code, library).SelectMany(finding => finding.Fixes.Where(Library.IsApplied).Take(1)).FirstOrDefault() is { } fix)
            {
                library = library.With(fix);
                Assert.True(++steps <= 50, $"The fixes of {code} do not come to an end in {found.Name}.");
            }

            if (steps == 0)
            {
                continue;
            }

            var name = found.Name.Replace("/fires", "/fixed", StringComparison.Ordinal);
            foreach (var (path, text) in library.Files)
            {
                Expected.Compare(Path.Combine(Checkout.Cases, name, path), text);
            }
        }
    }

    private static IEnumerable<Finding> FindingsOf(string code, Library library) => library.Check().Where(finding => finding.Rule.Code == code);

    private static bool IsOfText(Finding finding) => finding.Rule.Code.StartsWith("PRC10", StringComparison.Ordinal);
}
