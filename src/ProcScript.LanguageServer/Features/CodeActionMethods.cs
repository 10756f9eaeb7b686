using System.Collections.Immutable;
using ProcScript.Analysis;
using ProcScript.Analysis.Completion;
using ProcScript.Analysis.Refactoring;
using ProcScript.LanguageServer.Checking;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Serving;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.LanguageServer.Features;

/// <summary>The cures that findings bring along, and the steps that a stage lacks, as edits to apply.</summary>
/// <param name="edits">Writes the edits.</param>
/// <param name="diagnostics">Writes the findings that they mend.</param>
/// <param name="refactorings">Offers the other ways to write what is selected.</param>
internal sealed class CodeActionMethods(EditWriter edits, DiagnosticWriter diagnostics, RefactoringActions refactorings)
{
    /// <summary>How the protocol says that the editor asks by itself.</summary>
    private const int Automatic = 2;

    /// <summary>How it says that somebody asks.</summary>
    private const int ByHand = 1;

    /// <summary>Adds the method.</summary>
    public void Add(MethodTable methods, Workspace workspace) =>
        methods.Request<CodeActionParams, ImmutableArray<CodeAction>>("textDocument/codeAction", async (parameters, cancellation) =>
        {
            var wantsFixes = Wants(parameters.Context, CodeAction.QuickFix);
            var wantsRewrites = Wants(parameters.Context, CodeAction.Rewrite);
            var wantsExtracts = Wants(parameters.Context, CodeAction.Extract);
            var wantsFixAll = parameters.Context.Only is not null && Wants(parameters.Context, CodeAction.FixAll);
            var wantsViews = parameters.Context.TriggerKind == ByHand && Wants(parameters.Context, CodeAction.Show);
            if (!(wantsFixes || wantsRewrites || wantsExtracts || wantsFixAll || wantsViews) || await workspace.AskAsync(parameters.TextDocument, cancellation).ConfigureAwait(false) is not { } asked)
            {
                return [];
            }

            var span = asked.Places.SpanOf(parameters.Range);
            return
            [
                .. wantsFixes ? Merged(Cures(asked, span, cancellation)) : [],
                .. wantsFixes ? OfWholeRules(asked, span) : [],
                .. wantsFixes ? new DraftActions(edits, diagnostics).Of(asked, span) : [],
                .. wantsRewrites ? Rewrites(asked, span, cancellation) : [],

                // To find the way is a search: it is done for who opens the menu, not at every step of the cursor.
                .. wantsRewrites && parameters.Context.TriggerKind != Automatic ? new ReachActions(edits).Of(asked, span) : [],
                .. wantsRewrites || wantsExtracts ? refactorings.Of(asked, span, kind => Wants(parameters.Context, kind), cancellation) : [],
                .. wantsViews ? BackView.Offer(asked, parameters.TextDocument.Uri, span) : [],
                .. wantsFixAll ? refactorings.FixAll(asked, cancellation) : [],
            ];
        });

    /// <summary>Whether a kind is asked for: by itself, by one above it, or because all are.</summary>
    private static bool Wants(CodeActionContext context, string kind) =>
        context.Only is not { } only || only.Any(one => one.Length == 0 || kind == one || kind.StartsWith(one + ".", StringComparison.Ordinal));

    /// <summary>One action for the same edit of several findings.</summary>
    private static IEnumerable<CodeAction> Merged(IEnumerable<(Fix Fix, CodeAction Action)> cures) =>
        from cure in cures
        group cure.Action by string.Join('\0', cure.Fix.Edits.Select(edit => $"{edit.Place.Path}\0{edit.Place.Span.Start}\0{edit.Place.Span.Length}\0{edit.NewText}")) into same
        select same.First() with
        {
            Diagnostics = [.. same.SelectMany(action => action.Diagnostics ?? [])],
            IsPreferred = same.Any(action => action.IsPreferred == true) ? true : null,
        };

    /// <summary>The fixes of all findings of a rule in the file, for the rules that speak at a place.</summary>
    private IEnumerable<CodeAction> OfWholeRules(Asked asked, TextSpan span) =>
        from rule in At(asked, span).Select(reported => reported.Finding.Rule).Distinct()
        let fix = RuleFixes.AllOf(asked.Analysis.Report, asked.Path, rule)
        where fix is not null
        select new CodeAction(fix.Title, CodeAction.QuickFix, edits.Write(asked.Analysis, fix.Edits));

    /// <summary>The findings that touch a stretch of the document.</summary>
    public static IEnumerable<ReportedFinding> At(Asked asked, TextSpan span) =>
        from reported in asked.Analysis.Report.Findings
        let place = reported.Finding.Primary
        where place.Path == asked.Path && place.Span.Start <= span.End && place.Span.End >= span.Start
        select reported;

    private IEnumerable<(Fix Fix, CodeAction Action)> Cures(Asked asked, TextSpan span, CancellationToken cancellation) =>
        from reported in At(asked, span)
        from cure in Cures(asked, reported, cancellation)
        select cure;

    private IEnumerable<(Fix Fix, CodeAction Action)> Cures(Asked asked, ReportedFinding reported, CancellationToken cancellation)
    {
        var fixes = reported.Finding.Fixes.Where(fix => fix.Grade != FixGrade.DisplayOnly).ToList();
        var proven = MissingSteps.For(asked.Analysis.Report, reported.Finding.Primary, cancellation);
        if (proven is not null)
        {
            // What the finding itself proposes may be the same edit: it is proven then.
            var same = fixes.FindIndex(fix => fix.Edits.SequenceEqual(proven.Edits));
            if (same < 0)
            {
                fixes.Insert(0, proven);
            }
            else
            {
                fixes[same] = fixes[same] with { Grade = proven.Grade };
            }
        }

        var safe = fixes.FindAll(fix => fix.Grade == FixGrade.Safe);
        foreach (var fix in fixes)
        {
            yield return (fix, new CodeAction(fix.Title, CodeAction.QuickFix, edits.Write(asked.Analysis, fix.Edits))
            {
                Diagnostics = [diagnostics.Write(reported, asked.Analysis)],
                IsPreferred = safe.Count == 1 && fix == safe[0] && (fixes.Count == 1 || proven is not null) ? true : null,
            });
        }
    }

    private IEnumerable<CodeAction> Rewrites(Asked asked, TextSpan span, CancellationToken cancellation)
    {
        var stretches = asked.Tree.Root.Declarations.OfType<ProcedureSyntax>().Where(procedure => Meets(procedure, span)).SelectMany(procedure => Stretches(procedure, span));
        foreach (var stretch in stretches)
        {
            if (MissingSteps.For(asked.Analysis.Report, new SourceSpan(asked.Path, stretch.Span), cancellation) is { } fix)
            {
                var place = stretch switch
                {
                    StageSyntax { Title.Value: var title } => $"Stage \"{title}\"",
                    DoSyntax { Procedure.Text: var name } => $"`do {name}`",
                    WorkSyntax => "Work",
                    _ => "Procedure",
                };
                var grade = fix.Grade == FixGrade.Safe ? "" : " (needs a look)";
                yield return new CodeAction($"{place}: {char.ToLowerInvariant(fix.Title[0])}{fix.Title[1..]}{grade}", CodeAction.Rewrite, edits.Write(asked.Analysis, fix.Edits));
            }
        }
    }

    /// <summary>What of a procedure is meant: stages, the work, calls between them; the whole where none of these is.</summary>
    private static IEnumerable<SyntaxNode> Stretches(ProcedureSyntax procedure, TextSpan span)
    {
        var end = 0;
        foreach (var node in procedure.DescendantsAndSelf().Where(node => node is StageSyntax or WorkSyntax or DoSyntax && Meets(node, span)))
        {
            // A call within a stage is part of that.
            if (node.Span.Start >= end)
            {
                end = node.Span.End;
                yield return node;
            }
        }

        if (end == 0)
        {
            yield return procedure;
        }
    }

    private static bool Meets(SyntaxNode node, TextSpan span) => node.Span.Start <= span.End && node.Span.End >= span.Start;
}
