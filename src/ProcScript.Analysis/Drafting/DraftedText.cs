using ProcScript.Analysis.Mending;
using ProcScript.Analysis.Refactoring;
using ProcScript.Model.Sources;
using ProcScript.Syntax;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Formatting;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Drafting;

/// <summary>One file with what is drafted into it.</summary>
/// <param name="tree">The file as it stands.</param>
internal sealed class DraftedText(SyntaxTree tree)
{
    private readonly List<TextEdit> _edits = [];

    private string Content => tree.Text.Content;

    /// <summary>Has it use further files.</summary>
    public void Use(IEnumerable<string> paths)
    {
        var top = tree.Root.Children.FirstOrDefault()?.Span.Start ?? 0;
        var lines = string.Concat(paths.Select(path => $"use {DraftWords.Quoted(LibraryPath.Relative(tree.Text.Path, path))}\n"));
        Insert(top, tree.Root.Uses.IsEmpty && lines.Length > 0 ? lines + "\n" : lines);
    }

    /// <summary>Puts declarations before one, and before the comments that stand right above it.</summary>
    public void Before(DeclarationSyntax declaration, string text) => Insert(SelectedSteps.WithComments(tree.Text, declaration.Span.Start), text);

    /// <summary>Puts catalog entries where the file has some already; else before the machine.</summary>
    public void Catalog(MachineSyntax machine, string entries)
    {
        if (entries.Length == 0)
        {
            return;
        }

        if (tree.Root.Declarations.TakeWhile(one => one.Span.Start < machine.Span.Start).LastOrDefault(one => one is CatalogSyntax) is { } last)
        {
            var line = tree.Text.LineSpan(tree.Text.LineAt(last.Span.End));
            Insert(line.End, "\n" + entries);
        }
        else
        {
            Before(machine, entries + "\n\n");
        }
    }

    /// <summary>Puts members at the end of a block; a part without one gets one.</summary>
    public void Into(SyntaxNode block, string members)
    {
        if (members.Length == 0)
        {
            return;
        }

        // A part without braces ends in its name or its title.
        var hasBlock = Content[block.Span.End - 1] == '}';
        Insert(hasBlock ? block.Span.End - 1 : block.Span.End, hasBlock ? "\n" + members : $" {{\n{members}}}");
    }

    /// <summary>Takes out of the steps what the machine says now; where it says otherwise, the step keeps it, and a finding tells.</summary>
    public void Shorten(ProcedureSyntax procedure, DeclaredItems declared)
    {
        foreach (var action in procedure.DescendantsAndSelf().OfType<ActionSyntax>())
        {
            if (action.Pieces is { } pieces && ItemSorts.OfVerb(action.Verb.Text) is { } sort && ItemSorts.IsJoint(sort)
                && (!declared.Has(action.Target.Name.Text)
                    || (declared.Joint(action.Target.Name.Text) is { } joint && joint.Count.Value == pieces.Count.Value && joint.Kind.Text == pieces.Kind.Text)))
            {
                _edits.Add(new TextEdit(new SourceSpan(tree.Text.Path, TextSpan.FromBounds(pieces.Span.Start, action.Target.Span.Start)), ""));
            }
        }
    }

    /// <summary>The file as it comes out, laid out; null where nothing changes.</summary>
    public MendedFile? Finish()
    {
        if (_edits.Count == 0)
        {
            return null;
        }

        var text = TextEdits.Apply(Content, _edits.Index().OrderBy(edit => edit.Item.Place.Span.Start).ThenBy(edit => edit.Index).Select(edit => edit.Item));
        text = Formatter.Format(SyntaxTree.Parse(new SourceText(tree.Text.Path, text))) ?? text;
        return text == Content ? null : new MendedFile(tree.Text.Path, Content, text);
    }

    private void Insert(int place, string text)
    {
        if (text.Length > 0)
        {
            _edits.Add(new TextEdit(new SourceSpan(tree.Text.Path, new TextSpan(place, 0)), text));
        }
    }
}
