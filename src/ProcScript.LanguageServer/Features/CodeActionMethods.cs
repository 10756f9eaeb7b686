using System.Collections.Immutable;
using ProcScript.Analysis;
using ProcScript.Analysis.Completion;
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
internal sealed class CodeActionMethods(EditWriter edits, DiagnosticWriter diagnostics)
{
    /// <summary>Adds the method.</summary>
    public void Add(MethodTable methods, Workspace workspace) =>
        methods.Request<CodeActionParams, ImmutableArray<CodeAction>>("textDocument/codeAction", async (parameters, cancellation) =>
        {
            var wantsFixes = Wants(parameters.Context, CodeAction.QuickFix);
            var wantsRewrites = Wants(parameters.Context, CodeAction.Rewrite);
            if (!(wantsFixes || wantsRewrites) || await workspace.AskAsync(parameters.TextDocument, cancellation).ConfigureAwait(false) is not { } asked)
            {
                return [];
            }

            var span = asked.Places.SpanOf(parameters.Range);
            return
            [
                .. wantsFixes ? Cures(asked, span, cancellation) : [],
                .. wantsFixes ? new DraftActions(edits, diagnostics).Of(asked, span) : [],
                .. wantsRewrites ? Rewrites(asked, span, cancellation) : [],
            ];
        });

    /// <summary>Whether a kind is asked for: by itself, by one above it, or because all are.</summary>
    private static bool Wants(CodeActionContext context, string kind) =>
        context.Only is not { } only || only.Any(one => one.Length == 0 || kind == one || kind.StartsWith(one + ".", StringComparison.Ordinal));

    private IEnumerable<CodeAction> Cures(Asked asked, TextSpan span, CancellationToken cancellation) =>
        from reported in asked.Analysis.Report.Findings
        let place = reported.Finding.Primary
        where place.Path == asked.Path && place.Span.Start <= span.End && place.Span.End >= span.Start
        from action in Cures(asked, reported, cancellation)
        select action;

    private IEnumerable<CodeAction> Cures(Asked asked, ReportedFinding reported, CancellationToken cancellation)
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
            yield return new CodeAction(fix.Title, CodeAction.QuickFix, edits.Write(asked.Analysis, fix.Edits))
            {
                Diagnostics = [diagnostics.Write(reported, asked.Analysis)],
                IsPreferred = safe.Count == 1 && fix == safe[0] && (fixes.Count == 1 || proven is not null) ? true : null,
            };
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
