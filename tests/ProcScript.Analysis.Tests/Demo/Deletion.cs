using System.Collections.Frozen;
using ProcScript.Syntax;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Tests.Demo;

/// <summary>One strip action taken out of the demo library, and whether the check sees it.</summary>
/// <param name="Path">The file.</param>
/// <param name="Procedure">The procedure that the action stands in.</param>
/// <param name="Action">The action, from its verb to its target or position.</param>
/// <param name="Item">The name of its item, without the index.</param>
/// <param name="Span">What is taken out.</param>
internal sealed record Deletion(string Path, string Procedure, string Action, string Item, TextSpan Span)
{
    private static readonly FrozenSet<string> StripVerbs = FrozenSet.ToFrozenSet(
    [
        "undo", "loosen", "release", "unplug", "disconnect", "cut", "aside", "remove", "set", "isolate", "empty", "support", "strip",
    ]);

    /// <summary>Every way to take one strip action out of the library.</summary>
    public static IEnumerable<Deletion> All =>
        from file in DemoLibrary.Files
        let tree = SyntaxTree.Parse(new SourceText(file.Key, file.Value))
        from procedure in tree.Root.Declarations.OfType<ProcedureSyntax>()
        from action in ActionsIn(procedure)
        let last = (SyntaxNode?)action.Position ?? action.Target
        select new Deletion(
            file.Key,
            procedure.Name.Text,
            tree.Text.Slice(TextSpan.FromBounds(action.Span.Start, last.Span.End)),
            action.Target.Name.Text,
            action.Span);

    /// <summary>The strip actions below a node.</summary>
    public static IEnumerable<ActionSyntax> ActionsIn(SyntaxNode node) =>
        node.DescendantsAndSelf().OfType<ActionSyntax>().Where(action => StripVerbs.Contains(action.Verb.Text));

    /// <summary>The check without the action, of everything that its file is a part of.</summary>
    public LibraryReport Check() => DemoLibrary.Check(DemoLibrary
        .FilesThatConcern(Path)
        .Select(file => file.Key == Path ? KeyValuePair.Create(Path, file.Value.Remove(Span.Start, Span.Length)) : file));

    /// <summary>Whether an error of the strip or the refit names the item.</summary>
    public bool IsFound(LibraryReport report)
    {
        var names = report.Library.Machines
            .SelectMany(machine => machine.Items.Values)
            .Where(item => item.Name == Item || item.Name.StartsWith(Item + "[", StringComparison.Ordinal))
            .SelectMany(item => new[] { item.Name, item.Title })
            .ToHashSet(StringComparer.Ordinal);
        return report.Findings
            .Where(reported => reported.Severity == Severity.Error && reported.Finding.Rule.Code[3] is '3' or '4')
            .Any(reported => names.Any(name => DemoLibrary.Words(reported).Contains(name, StringComparison.Ordinal)));
    }

    /// <inheritdoc/>
    public override string ToString() => $"{Procedure}: {Action}";
}
