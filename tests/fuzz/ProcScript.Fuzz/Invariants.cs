using System.Collections.Immutable;
using System.Globalization;
using ProcScript.Analysis;
using ProcScript.Analysis.Checking;
using ProcScript.Analysis.Mending;
using ProcScript.Analysis.Settings;
using ProcScript.Cards;
using ProcScript.Fuzz.Inputs;
using ProcScript.Model;
using ProcScript.Model.Sources;
using ProcScript.Syntax;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Formatting;
using ProcScript.Syntax.Text;
using ProcScript.Syntax.Tokens;

namespace ProcScript.Fuzz;

/// <summary>All that must hold of every input.</summary>
internal static class Invariants
{
    /// <summary>All of them, the cheap ones first.</summary>
    public static ImmutableArray<Invariant> All { get; } =
    [
        new SpansLieInTheText(), new FormatSettles(), new FixesOnlyMend(), new AnEditIsAFreshCheck(), new ProvenMakesAPack(),
    ];

    /// <summary>Whatever a finding points to is there.</summary>
    private sealed record SpansLieInTheText() : Invariant(1)
    {
        public override Broken? Find(FuzzInput input, CheckedInput check, CancellationToken cancellation)
        {
            foreach (var finding in check.Report.Findings.Concat(check.Report.Silenced).Select(one => one.Finding))
            {
                var places = finding.Related.Select(related => related.Place).Append(finding.Primary)
                    .Concat(finding.Fixes.SelectMany(fix => fix.Edits).Select(edit => edit.Place));
                foreach (var place in places.Where(place => Length(check, place.Path) is { } length && (place.Span.Start < 0 || place.Span.Length < 0 || place.Span.End > length)))
                {
                    return new Broken("spans lie in the text", $"{finding.Rule.Code} points to {place}");
                }

                foreach (var fix in finding.Fixes.Where(fix => !LieApart(fix)))
                {
                    return new Broken("edits of a fix lie apart", $"{finding.Rule.Code}: {fix.Title}");
                }
            }

            return null;
        }

        private static bool LieApart(Fix fix)
        {
            var edits = fix.Edits.OrderBy(edit => edit.Place.Path, StringComparer.Ordinal).ThenBy(edit => edit.Place.Span.Start).ThenBy(edit => edit.Place.Span.Length).ToList();
            return edits.Zip(edits.Skip(1)).All(pair => pair.First.Place.Path != pair.Second.Place.Path || pair.First.Place.Span.End <= pair.Second.Place.Span.Start);
        }

        private static int? Length(CheckedInput check, string path) => check.Report.TextOf(path)?.Content.Length;
    }

    /// <summary>A text that is laid out stays as it is, says what it said and holds every comment.</summary>
    private sealed record FormatSettles() : Invariant(1)
    {
        public override Broken? Find(FuzzInput input, CheckedInput check, CancellationToken cancellation)
        {
            var tree = check.Report.Library.Trees.GetValueOrDefault(input.Changed);
            if (tree is null || Formatter.Format(tree) is not { } formatted || formatted == tree.Text.Content)
            {
                return null;
            }

            if (Formatter.Format(SyntaxTree.Parse(new SourceText(input.Changed, formatted), cancellation)) is var again && again != formatted)
            {
                return new Broken("format settles", CheckedInput.FirstDifference(formatted, again ?? "(a refusal)"));
            }

            var (before, after) = (CheckedInput.Words(check.Report), CheckedInput.Words(CheckedInput.Of(input.Library.With(input.Changed, formatted), cancellation).Report));
            return before == after ? null : new Broken("format changes no finding", CheckedInput.FirstDifference(before, after));
        }
    }

    /// <summary>What is fixed has fewer errors, or as many and no more other findings; it has every comment, and the second time there is nothing to fix.</summary>
    private sealed record FixesOnlyMend() : Invariant(2)
    {
        public override Broken? Find(FuzzInput input, CheckedInput check, CancellationToken cancellation)
        {
            if (!check.Report.Findings.Any(one => one.Finding.Fixes.Any(fix => fix.Grade == FixGrade.Safe)))
            {
                return null;
            }

            var mended = LibraryMend.Run(check.Store, check.Settings, new MendRequest(), cancellation);
            if (!mended.Fights.IsEmpty)
            {
                return new Broken("fixes settle", string.Join(' ', mended.Fighting.Select(rule => rule.Code)));
            }

            var library = mended.Files.Aggregate(input.Library, (library, file) => library.With(file.Path, file.After));
            var after = CheckedInput.Of(library, cancellation);
            // With an error gone, more is judged, and more may be found.
            if (after.Errors > check.Errors || (after.Errors == check.Errors && after.Report.Findings.Length > check.Report.Findings.Length))
            {
                return new Broken("fixes bring nothing new", CheckedInput.Added(CheckedInput.Words(check.Report), CheckedInput.Words(after.Report)));
            }

            if (mended.Files.FirstOrDefault(file => !Comments(file.Before).IsSubsetOf(Comments(file.After))) is { } lost)
            {
                return new Broken("fixes lose no comment", string.Join(" | ", Comments(lost.Before).Except(Comments(lost.After))));
            }

            var again = LibraryMend.Run(after.Store, after.Settings, new MendRequest(), cancellation);
            return again.Files.IsEmpty ? null : new Broken("fixes are done at once", again.Mended[0].Finding.Rule.Code);
        }

        /// <summary>The comments of a text as they are seen: what has no width a fix may take out of them.</summary>
        private static ImmutableHashSet<string> Comments(string text) =>
        [
            .. SyntaxTree.Parse(new SourceText("a.proc", text)).Tokens.Where(token => token.Category == TokenCategory.Comment)
                .Select(token => string.Concat(text.Substring(token.Span.Start, token.Span.Length).Where(IsSeen)).Trim()),
        ];

        private static bool IsSeen(char one) => char.GetUnicodeCategory(one) is not (UnicodeCategory.Format or UnicodeCategory.OtherNotAssigned);
    }

    /// <summary>What an editor shows after a change is what a fresh check says.</summary>
    private sealed record AnEditIsAFreshCheck() : Invariant(4)
    {
        public override Broken? Find(FuzzInput input, CheckedInput check, CancellationToken cancellation)
        {
            var (binding, checks, parsed) = (new BindingMemory(), new CheckMemory(), new ParsedFiles());
            var report = check.Report;
            foreach (var library in new[] { input.Before, input.Library, input.Before, input.Library })
            {
                var store = new EditedStore(new MemorySourceStore(library.Files), parsed);
                report = LibraryCheck.Run(LibraryBinder.Bind(store, binding, cancellation), SettingsReader.Read(store), checks, cancellation);
            }

            var (fresh, edited) = (CheckedInput.WordsAndPlaces(check.Report), CheckedInput.WordsAndPlaces(report));
            return fresh == edited ? null : new Broken("an edit is a fresh check", CheckedInput.FirstDifference(fresh, edited));
        }
    }

    /// <summary>Whatever is proven can be printed.</summary>
    private sealed record ProvenMakesAPack() : Invariant(6)
    {
        public override Broken? Find(FuzzInput input, CheckedInput check, CancellationToken cancellation)
        {
            foreach (var plan in check.Report.Procedures.Where(one => one.IsProven).Take(2).Select(one => one.CreatePlan()!))
            {
                if (WorkPack.Html(plan, PackTemplates.Standard).Text.Length == 0 || WorkPack.Markdown(plan, PackTemplates.Standard).Text.Length == 0 || WorkPack.Json(plan).Length == 0)
                {
                    return new Broken("what is proven is printed", plan.Procedure);
                }
            }

            return null;
        }
    }
}
