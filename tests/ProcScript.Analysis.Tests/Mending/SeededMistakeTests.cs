using System.Collections.Concurrent;
using System.Text.RegularExpressions;
using ProcScript.Analysis.Mending;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Tests.Mending;

/// <summary>Single mistakes in the demo library: whatever is mended, nobody is less safe for it, and no author's reason is gone.</summary>
[Slow]
public sealed partial class SeededMistakeTests
{
    [Fact]
    public void No_safe_fix_takes_out_a_comment_or_a_precaution_or_brings_an_error_or_costs_a_proof()
    {
        var (wrong, mended) = (new ConcurrentBag<string>(), 0);
        Parallel.ForEach(SeededMistake.Some, mistake =>
        {
            MemorySourceStore store = new(mistake.Files);
            var before = LibraryCheck.Run(store, CheckSettings.Usual, TestContext.Current.CancellationToken);
            var report = LibraryMend.Run(store, CheckSettings.Usual, new MendRequest(), TestContext.Current.CancellationToken);
            Interlocked.Add(ref mended, report.Mended.Length);
            foreach (var trouble in Troubles(mistake, before, report))
            {
                wrong.Add($"{mistake}: {trouble}");
            }
        });

        Assert.Empty(wrong.Order(StringComparer.Ordinal));
        Assert.True(mended >= SeededMistake.Some.Length / 6, $"only {mended} were mended of {SeededMistake.Some.Length}");
    }

    [Fact]
    public void No_fix_at_all_brings_an_error_takes_out_a_comment_or_a_precaution_or_goes_on_for_ever()
    {
        var wrong = new ConcurrentBag<string>();
        Parallel.ForEach(SeededMistake.Some, mistake =>
        {
            MemorySourceStore store = new(Commented(mistake.Files));
            var before = LibraryCheck.Run(store, CheckSettings.Usual, TestContext.Current.CancellationToken);
            foreach (var request in new[] { new MendRequest(), new MendRequest { NeedsLook = true } })
            {
                var report = LibraryMend.Run(store, CheckSettings.Usual, request, TestContext.Current.CancellationToken);
                if (Errors(report.After) > Errors(before))
                {
                    wrong.Add($"{mistake}: {Errors(before)} errors before, {Errors(report.After)} after");
                }

                foreach (var file in report.Files.Where(file => Comments(file.Before).Except(Comments(file.After)).Any()))
                {
                    wrong.Add($"{mistake}: lost in {file.Path}: {string.Join(" | ", Comments(file.Before).Except(Comments(file.After)))}");
                }

                foreach (var file in report.Files.Where(file => Precaution.Count(file.After) < Precaution.Count(file.Before)))
                {
                    wrong.Add($"{mistake}: a precaution of {file.Path} is gone");
                }

                foreach (var fight in report.Fights)
                {
                    wrong.Add($"{mistake}: {string.Join(" and ", fight.Rules.Select(rule => rule.Code))} fight in {fight.Path}");
                }
            }
        });

        Assert.Empty(wrong.Order(StringComparer.Ordinal));
    }

    /// <summary>A comment of its own behind every line that has none.</summary>
    private static IEnumerable<KeyValuePair<string, string>> Commented(IEnumerable<KeyValuePair<string, string>> files) => files.Select(file => KeyValuePair.Create(
        file.Key,
        string.Join('\n', file.Value.Split('\n').Select((line, i) => line.Trim().Length == 0 || line.Contains("//", StringComparison.Ordinal) ? line : $"{line}  // seen {i}"))));

    private static IEnumerable<string> Comments(string text) => text.Split('\n').Where(line => line.Contains("// seen ", StringComparison.Ordinal))
        .Select(line => line[line.IndexOf("// seen ", StringComparison.Ordinal)..].Trim());

    private static IEnumerable<string> Troubles(SeededMistake mistake, LibraryReport before, MendReport report)
    {
        foreach (var file in report.Files)
        {
            if (Allowance.Count(file.After) < Allowance.Count(file.Before))
            {
                yield return $"a comment of {file.Path} is gone";
            }

            if (Precaution.Count(file.After) < Precaution.Count(file.Before))
            {
                yield return $"a precaution of {file.Path} is gone";
            }
        }

        var (was, now) = (Errors(before), Errors(report.After));
        if (now > was || (now == was && report.After.Findings.Length > before.Findings.Length))
        {
            yield return $"{was} errors before, {now} after";
        }

        foreach (var lost in Proven(before).Except(Proven(report.After)))
        {
            yield return $"{lost} is no longer proven";
        }

        if (before.Findings.Any(reported => reported.Finding.Rule.Code == "PRC7002") && (was > 0 || !before.Procedures.All(procedure => procedure.IsProven)))
        {
            // Procedures of other machines may be proven; of the mistaken one's nobody knows.
            var told = before.Findings.First(reported => reported.Finding.Rule.Code == "PRC7002").Finding.Primary.Path;
            if (before.Procedures.Any(procedure => !procedure.IsProven && procedure.Procedure.Files.Contains(told)))
            {
                yield return $"a comment of {told} is said to silence nothing, and {mistake.Path} is not proven";
            }
        }
    }

    private static int Errors(LibraryReport report) => report.Findings.Count(reported => reported.Severity == Severity.Error);

    private static IEnumerable<string> Proven(LibraryReport report) => report.Procedures.Where(procedure => procedure.IsProven).Select(procedure => procedure.Key);

    [GeneratedRegex("// proc: allow")]
    private static partial Regex Allowance { get; }

    [GeneratedRegex(@"(?<=^|[{}]|\w|"") +(?:isolate|empty|support) +[a-z]\w*(?=[\[ \n}])", RegexOptions.Multiline)]
    private static partial Regex Precaution { get; }
}
