using System.Collections.Immutable;
using ProcScript.Model;
using ProcScript.Model.Procedures;
using ProcScript.Syntax;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Drafting;

/// <summary>Finds the open questions that a procedure leans on: its own, those of its machine, of what it calls and of the catalog entries it takes.</summary>
internal static class OpenQuestions
{
    /// <summary>The questions with their places, in the order of files and text.</summary>
    public static ImmutableArray<(string Text, SourceSpan Place)> Of(Library library, Procedure procedure)
    {
        SyntaxTree[] trees = [.. procedure.Files.Select(path => library.Trees[path])];
        var questions = trees.SelectMany(tree => DraftQuestions.In(tree)
            .Select(question => (question.Text, Place: new SourceSpan(tree.Text.Path, question.Span), Of: Owner(tree, question)))).ToList();
        if (questions.Count == 0)
        {
            return [];
        }

        var reached = Reached(trees, procedure);
        return [.. questions.Where(question => question.Of is null || reached.Contains(question.Of)).Select(question => (question.Text, question.Place))];
    }

    /// <summary>The declaration that a question is about: the one on whose lines it stands, else the next one.</summary>
    private static DeclarationSyntax? Owner(SyntaxTree tree, DraftQuestion question)
    {
        var line = tree.Text.LineAt(question.Span.Start);
        return tree.Root.Declarations.FirstOrDefault(one => tree.Text.LineAt(one.Span.End) >= line) ?? tree.Root.Declarations.LastOrDefault();
    }

    /// <summary>All that a procedure leads to by names. A name that is also an item's leads too far at the worst, and that is the safe side.</summary>
    private static HashSet<DeclarationSyntax> Reached(SyntaxTree[] trees, Procedure procedure)
    {
        var declared = trees.SelectMany(tree => tree.Root.Declarations).ToLookup(one => one.Name.Text, StringComparer.Ordinal);
        var reached = new HashSet<DeclarationSyntax>(ReferenceEqualityComparer.Instance);
        var open = new Stack<DeclarationSyntax>(trees
            .Where(tree => tree.Text.Path == procedure.Declared.Path)
            .SelectMany(tree => tree.Root.Declarations.Where(one => one.Span.Start <= procedure.Declared.Span.Start && one.Span.End >= procedure.Declared.Span.End)));
        while (open.TryPop(out var declaration))
        {
            if (!reached.Add(declaration))
            {
                continue;
            }

            foreach (var word in declaration.DescendantsAndSelf().OfType<WordSyntax>().Select(word => word.Text).Distinct(StringComparer.Ordinal))
            {
                foreach (var next in declared[word])
                {
                    open.Push(next);
                }
            }
        }

        return reached;
    }
}
