using System.Collections.Immutable;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Parsing;

/// <summary>
/// From the tree of a text to that of the text after a change, as a parse of the whole would give it: only the declarations that the
/// change touches are read, and the others are the same nodes as before.
/// </summary>
internal sealed class ChangedFile
{
    private readonly SyntaxTree _old;
    private readonly SourceText _text;

    /// <summary>How many characters are compared at once from the end of a text.</summary>
    private const int Block = 512;

    // What changed, as a stretch of the old text; what stands behind it may have moved.
    private readonly TextSpan _change;
    private readonly bool _isMoved;

    private ChangedFile(SyntaxTree old, SourceText text, TextSpan change)
    {
        _old = old;
        _text = text;
        _change = change;
        _isMoved = text.Content.Length != old.Text.Content.Length;
    }

    /// <summary>The tree of a text.</summary>
    /// <param name="old">The tree of the text before.</param>
    /// <param name="text">The text now.</param>
    /// <param name="cancellation">Gives up the parse.</param>
    public static SyntaxTree Parse(SyntaxTree old, SourceText text, CancellationToken cancellation)
    {
        var (before, after) = (old.Text.Content, text.Content);
        var start = before.AsSpan().CommonPrefixLength(after);
        var most = Math.Min(before.Length, after.Length) - start;
        var same = 0;
        while (same + Block <= most && before.AsSpan(before.Length - same - Block, Block).SequenceEqual(after.AsSpan(after.Length - same - Block, Block)))
        {
            same += Block;
        }

        while (same < most && before[^(same + 1)] == after[^(same + 1)])
        {
            same++;
        }

        var file = new ChangedFile(old, text, TextSpan.FromBounds(start, before.Length - same));
        return file.Patch(cancellation) ?? file.Adopt(FileParser.Parse(text, cancellation));
    }

    /// <summary>Reads what is between the declarations that stay; null where that is not sure to be all.</summary>
    private SyntaxTree? Patch(CancellationToken cancellation)
    {
        var declarations = _old.Root.Declarations;
        var first = declarations.Length - 1;
        while (first >= 0 && (declarations[first].Span.Start > _change.Start || !BeginsLine(declarations[first])))
        {
            first--;
        }

        if (first < 0 || (_change.Length == 0 && !_isMoved))
        {
            return null;
        }

        var next = first + 1;
        while (next < declarations.Length && (declarations[next].Span.Start <= _change.End || !BeginsLine(declarations[next])))
        {
            next++;
        }

        if (_isMoved && next < declarations.Length)
        {
            return null;
        }

        var lines = TextSpan.FromBounds(
            declarations[first].Span.Start, next < declarations.Length ? declarations[next].Span.Start : _text.Content.Length);
        if (_old.Root.Uses.Any(use => use.Span.End > lines.Start)
            || _old.Findings.Any(finding => finding.Primary.Span.Start < lines.Start || IsBehind(finding.Primary.Span, lines))
            || FileParser.ParseCleanLines(_text, lines, cancellation) is not var (root, lexed))
        {
            return null;
        }

        ImmutableArray<DeclarationSyntax> all = [.. declarations[..first], .. root.Declarations, .. declarations[next..]];
        var begin = _old.Root.Uses is [var use, ..] ? Math.Min(use.Span.Start, all[0].Span.Start) : all[0].Span.Start;
        return new SyntaxTree(
            _text,
            new FileSyntax(TextSpan.FromBounds(begin, all[^1].Span.End), _old.Root.Uses, all),
            Suppressions(lines, lexed),
            []);
    }

    private bool BeginsLine(DeclarationSyntax declaration) =>
        declaration.Span.Start is var start && (start == 0 || _old.Text.Content[start - 1] == '\n');

    /// <summary>Comments speak of the next line that holds anything else, so of one in front of the change that line may have moved.</summary>
    private ImmutableArray<SuppressionComment> Suppressions(TextSpan lines, LexedFile lexed)
    {
        if (_old.Suppressions.IsEmpty && lexed.Suppressions.IsEmpty)
        {
            return [];
        }

        var firstBefore = _old.Text.LineAt(lines.Start);
        var firstNow = _text.LineAt(lexed.Lexemes[0].Start);
        var moved = _text.LineCount - _old.Text.LineCount;
        var behind = _text.LineAt(lines.End);
        return
        [
            .. _old.Suppressions.Where(one => one.Span.Start < lines.Start)
                .Select(one => one.TargetLine == firstBefore ? one with { TargetLine = firstNow } : one),
            .. lexed.Suppressions.Select(one => one.TargetLine == _text.LineCount && lines.End < _text.Content.Length ? one with { TargetLine = behind } : one),
            .. _old.Suppressions.Where(one => IsBehind(one.Span, lines)).Select(one => one with { TargetLine = one.TargetLine + moved }),
        ];
    }

    /// <summary>Whether a stretch of the old text stands behind the lines that are read; of a text that moved, these are all the rest.</summary>
    private bool IsBehind(TextSpan span, TextSpan lines) => !_isMoved && span.Start >= lines.End;

    /// <summary>The same tree with the nodes of before for every declaration that is as it was.</summary>
    private SyntaxTree Adopt(SyntaxTree tree)
    {
        var slips = tree.Findings.Concat(_old.Findings).Select(finding => finding.Primary.Span.Start).Order().ToArray();
        var known = _old.Root.Declarations
            .Where(declaration => IsUntouched(declaration) && !HoldsAny(declaration.Span, slips))
            .ToDictionary(declaration => declaration.Span);
        ImmutableArray<DeclarationSyntax> declarations =
        [
            .. tree.Root.Declarations.Select(declaration =>
                known.TryGetValue(declaration.Span, out var same) && (slips.Length == 0 || IsSame(same, declaration)) ? same : declaration),
        ];
        return new SyntaxTree(_text, tree.Root with { Declarations = declarations }, tree.Suppressions, tree.Findings);
    }

    private bool IsUntouched(DeclarationSyntax declaration) =>
        declaration.Span.Length > 0 && (declaration.Span.End < _change.Start || (!_isMoved && declaration.Span.Start > _change.End));

    private static bool HoldsAny(TextSpan span, int[] places)
    {
        var found = Array.BinarySearch(places, span.Start);
        var next = found >= 0 ? found : ~found;
        return next < places.Length && places[next] <= span.End;
    }

    /// <summary>Whether two trees of the same characters came out alike, whatever was mended in the rest of the file.</summary>
    private static bool IsSame(SyntaxNode one, SyntaxNode other) =>
        one.GetType() == other.GetType() && one.Span == other.Span && one.Children.SequenceEqual(other.Children, SameNodes.Instance);

    private sealed class SameNodes : IEqualityComparer<SyntaxNode>
    {
        public static readonly SameNodes Instance = new();

        public bool Equals(SyntaxNode? x, SyntaxNode? y) => IsSame(x!, y!);

        public int GetHashCode(SyntaxNode obj) => obj.Span.GetHashCode();
    }
}
