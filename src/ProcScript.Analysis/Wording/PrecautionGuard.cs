using System.Collections.Frozen;
using ProcScript.Analysis.Actions;
using ProcScript.Model;
using ProcScript.Syntax;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Wording;

/// <summary>
/// Holds back every fix that would take a precaution out of a procedure, such as <c>isolate</c>, whichever rule proposes it: where it is
/// said twice, or for nothing, a person decides. All fixes pass here on their way to whoever applies or shows them.
/// </summary>
/// <param name="library">The library that the fixes are for.</param>
internal sealed class PrecautionGuard(Library library)
{
    private static readonly FrozenSet<string> Words = ActionTable.Rows.Where(row => row.IsPrecaution).Select(row => row.Word).ToFrozenSet(StringComparer.Ordinal);

    private readonly Lazy<FrozenSet<SourceSpan>> _calls = new(() => CallsThatBringOne(library));

    /// <summary>Whether it was looked at what calls bring, which stands in other files.</summary>
    public bool HasLookedAtCalls { get; set; }

    /// <summary>The finding without such fixes.</summary>
    public Finding Guarded(Finding finding) =>
        finding.Fixes.All(Keeps) ? finding : finding with { Fixes = [.. finding.Fixes.Where(Keeps)] };

    /// <summary>Whether every precaution that stands where a fix edits is there after it, even if elsewhere in the file.</summary>
    public bool Keeps(Fix fix) => fix.Edits.GroupBy(edit => edit.Place.Path, StringComparer.Ordinal).All(file => Keeps(file.Key, [.. file]));

    private bool Keeps(string path, List<TextEdit> edits)
    {
        if (!library.Trees.TryGetValue(path, out var tree))
        {
            return true;
        }

        var touched = edits.Where(edit => edit.Place.Span.Length > 0).SelectMany(edit => Precautions(tree, edit.Place.Span)).ToHashSet();
        if (touched.Count == 0)
        {
            return true;
        }

        var after = SyntaxTree.Parse(new SourceText(path, TextEdits.Apply(
            tree.Text.Content, edits.OrderBy(edit => edit.Place.Span.Start).ThenBy(edit => edit.Place.Span.Length))));
        var (before, left) = (Counts(tree), Counts(after));
        return touched.Select(node => Name(tree, node)).All(name => left.GetValueOrDefault(name) >= before[name]);
    }

    /// <summary>The precautions, and the calls that bring some, whose first word lies in a stretch.</summary>
    private IEnumerable<SyntaxNode> Precautions(SyntaxTree tree, TextSpan span) => tree.Root.Declarations
        .Where(declared => declared is ProcedureSyntax && declared.Span.Start < span.End && span.Start < declared.Span.End)
        .SelectMany(declared => declared.DescendantsAndSelf())
        .Where(node => node switch
        {
            ActionSyntax action => Words.Contains(action.Verb.Text) && action.Verb.Span.Start < span.End && span.Start < action.Verb.Span.End,
            DoSyntax call => call.Span.Start < span.End && span.Start < call.Span.End && BringsOne(new SourceSpan(tree.Text.Path, call.Span)),
            _ => false,
        });

    private bool BringsOne(SourceSpan call)
    {
        HasLookedAtCalls = true;
        return _calls.Value.Contains(call);
    }

    /// <summary>How often each target has a precaution, and how often each call stands there.</summary>
    private static Dictionary<string, int> Counts(SyntaxTree tree) => tree.Root.Declarations
        .OfType<ProcedureSyntax>()
        .SelectMany(procedure => procedure.DescendantsAndSelf())
        .Where(node => node is DoSyntax || (node is ActionSyntax action && Words.Contains(action.Verb.Text)))
        .CountBy(node => Name(tree, node))
        .ToDictionary(StringComparer.Ordinal);

    private static string Name(SyntaxTree tree, SyntaxNode node) => tree.Text.Slice(node is ActionSyntax action ? action.Target.Span : node.Span);

    private static FrozenSet<SourceSpan> CallsThatBringOne(Library library) => library.Procedures
        .SelectMany(procedure => procedure.Stages)
        .SelectMany(stage => stage.Steps)
        .Where(step => ActionTable.Row(step.Verb).IsPrecaution)
        .SelectMany(step => step.Calls)
        .ToFrozenSet();
}
