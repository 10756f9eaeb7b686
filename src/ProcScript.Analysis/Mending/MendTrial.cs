using ProcScript.Syntax;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;
using ProcScript.Syntax.Tokens;

namespace ProcScript.Analysis.Mending;

/// <summary>Holds an edited library against the one before: whether the edits may stay.</summary>
internal static class MendTrial
{
    /// <summary>Why the edits must not stay, as the rest of a sentence; null where they may.</summary>
    /// <param name="before">The library before.</param>
    /// <param name="after">The library with the edits.</param>
    /// <param name="tried">What was edited.</param>
    public static string? Objection(MendState before, MendState after, IReadOnlyCollection<MendCandidate> tried) =>
        LeftFinding(before, after, tried)
        ?? LostComment(before, after, tried)
        ?? NewError(before, after)
        ?? (tried.All(one => one.Fix.Grade == FixGrade.Safe) ? MoreFindings(before, after) ?? OtherPack(before, after, tried) : null);

    private static string? LeftFinding(MendState before, MendState after, IReadOnlyCollection<MendCandidate> tried)
    {
        var (was, left) = (Counts(before), Counts(after));
        var stays = tried.SelectMany(one => one.Findings)
            .GroupBy(KeyOf)
            .FirstOrDefault(mended => left.GetValueOrDefault(mended.Key) > was[mended.Key] - mended.Count());
        return stays is null ? null : "it would leave the finding";

        static (string Code, string Path) KeyOf(Finding finding) => (finding.Rule.Code, finding.Primary.Path);

        static Dictionary<(string Code, string Path), int> Counts(MendState state) =>
            state.Report.Findings.CountBy(reported => KeyOf(reported.Finding)).ToDictionary();
    }

    /// <summary>A comment is somebody's word: only a finding about the comment itself takes it out.</summary>
    private static string? LostComment(MendState before, MendState after, IReadOnlyCollection<MendCandidate> tried)
    {
        foreach (var path in tried.SelectMany(one => one.Fix.Edits).Select(edit => edit.Place.Path).Distinct(StringComparer.Ordinal))
        {
            var text = before.Report.Library.Trees[path].Text;
            var left = after.Report.Library.Trees.TryGetValue(path, out var tree) ? Comments(tree).CountBy(comment => comment.Words).ToDictionary() : [];
            foreach (var (span, words) in Comments(before.Report.Library.Trees[path]))
            {
                var count = left.GetValueOrDefault(words);
                left[words] = count - 1;
                if (count <= 0 && !tried.SelectMany(one => one.Findings).Any(finding => finding.Primary.Path == path && span.Touches(finding.Primary.Span.Start)))
                {
                    return $"it would take out a comment, line {text.LineAt(span.Start) + 1}: {words}";
                }
            }
        }

        return null;
    }

    private static IEnumerable<(TextSpan Span, string Words)> Comments(SyntaxTree tree) => tree.Tokens
        .Where(token => token.Category == TokenCategory.Comment)
        .Select(token => (token.Span, tree.Text.Slice(token.Span).Trim()));

    private static string? NewError(MendState before, MendState after)
    {
        if (after.Errors.Sum(file => file.Count()) > before.Errors.Sum(file => file.Count()))
        {
            var known = before.Errors.SelectMany(file => file).CountBy(Key).ToDictionary();
            var more = after.Errors.SelectMany(file => file).First(error => Key(error) is var key && (known[key] = known.GetValueOrDefault(key) - 1) < 0);
            return $"it would bring an error, {more.Rule.Code}: {more.Message}";
        }

        return BroughtError(before, after);
    }

    private static string? BroughtError(MendState before, MendState after)
    {
        var known = before.Errors.SelectMany(file => file).CountBy(Key).ToDictionary();
        foreach (var error in after.Errors.SelectMany(file => file))
        {
            if (known.TryGetValue(Key(error), out var left) && left > 0)
            {
                known[Key(error)] = left - 1;
            }
            else if (IsBrought(error, before, after))
            {
                return $"it would bring an error, {error.Rule.Code}: {error.Message}";
            }
        }

        return null;
    }

    private static (string Code, string Path, string Message) Key(Finding finding) => (finding.Rule.Code, finding.Primary.Path, finding.Message);

    /// <summary>
    /// Whether an error is the edits' own. Where there were errors before, a cure only uncovers what they hid: a procedure whose names
    /// are not understood is not proven, and what follows from one failure is not told.
    /// </summary>
    private static bool IsBrought(Finding error, MendState before, MendState after)
    {
        var path = error.Primary.Path;
        if (!after.Report.Library.Trees.TryGetValue(path, out var now) || !before.Report.Library.Trees.TryGetValue(path, out var then))
        {
            return true;
        }

        if (now.Findings.Contains(error))
        {
            return now.Findings.Length >= then.Findings.Length;
        }

        if (!then.Findings.IsEmpty)
        {
            return false;
        }

        var name = NameAt(now.Root, error.Primary.Span);
        var span = then.Root.Declarations.FirstOrDefault(declared => declared.Name.Text == name)?.Span;
        var hadError = before.Errors[path].Any(known => span is not { } declaration || declaration.Touches(known.Primary.Span.Start));
        return !hadError && !before.IsUnproven(path, name);
    }

    private static string? NameAt(FileSyntax file, TextSpan span) =>
        file.Declarations.FirstOrDefault(declared => declared.Span.Touches(span.Start))?.Name.Text;

    /// <summary>
    /// A safe fix brings no error, not even one that was hidden before: where more is wrong, a person has to see all of it. Other findings may
    /// come to light only in files that are understood, or seen by what is proven, for the first time.
    /// </summary>
    private static string? MoreFindings(MendState before, MendState after)
    {
        var known = Counts(before);
        var lit = after.LitSince(before);
        foreach (var ((code, path, severity), findings) in after.Report.Findings
            .Concat(after.Report.Silenced)
            .GroupBy(KeyOf)
            .Select(same => (same.Key, same.ToList())))
        {
            if (findings.Count > known.GetValueOrDefault((code, path, severity)) && (severity == Severity.Error || !lit.Contains(path)))
            {
                var finding = findings[^1].Finding;
                return $"it would bring {(severity == Severity.Error ? "an error" : "a finding")}, {code}: {finding.Message}";
            }
        }

        return null;

        static (string Code, string Path, Severity Severity) KeyOf(ReportedFinding reported) =>
            (reported.Finding.Rule.Code, reported.Finding.Primary.Path, reported.Severity);

        static Dictionary<(string Code, string Path, Severity Severity), int> Counts(MendState state) =>
            state.Report.Findings.Concat(state.Report.Silenced).CountBy(KeyOf).ToDictionary();
    }

    /// <summary>A safe fix leaves the proof and the pack of every procedure that was proven as they were.</summary>
    private static string? OtherPack(MendState before, MendState after, IReadOnlyCollection<MendCandidate> tried)
    {
        var edited = tried.SelectMany(one => one.Fix.Edits).Select(edit => edit.Place.Path).ToHashSet(StringComparer.Ordinal);
        foreach (var was in before.Report.Procedures.Where(report => report.IsProven && report.Procedure.Files.Any(edited.Contains)))
        {
            if (after.Find(was) is not { IsProven: true } now)
            {
                return $"{was.Procedure.Name} would no longer be proven";
            }

            if (MendState.PackOf(was) != MendState.PackOf(now))
            {
                return $"it would change what the work pack of {was.Procedure.Name} says";
            }
        }

        return null;
    }
}
