using System.Collections.Frozen;
using ProcScript.Syntax;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Whole;

/// <summary>
/// The names that a file mentions outside of texts and comments, but for the name of a catalog entry where it is declared. It is read from
/// the letters and not from the tree, which is enough to tell that a name stands nowhere, and quick.
/// </summary>
/// <param name="Names">The names, with other words of the language among them.</param>
internal sealed record MentionedNames(FrozenSet<string> Names)
{
    /// <summary>The names in a file.</summary>
    public static MentionedNames Of(SyntaxTree tree)
    {
        var declared = tree.Root.Declarations.OfType<CatalogSyntax>().Select(entry => entry.Name.Span.Start).ToHashSet();
        var names = new HashSet<string>(StringComparer.Ordinal);
        var known = names.GetAlternateLookup<ReadOnlySpan<char>>();
        var text = tree.Text.Content.AsSpan();
        for (var i = 0; i < text.Length;)
        {
            if (IsOfName(text[i]))
            {
                var end = i + 1;
                while (end < text.Length && IsOfName(text[end]))
                {
                    end++;
                }

                if (!declared.Contains(i))
                {
                    known.Add(text[i..end]);
                }

                i = end;
            }
            else
            {
                i = AfterTextOrComment(text, i);
            }
        }

        return new MentionedNames(names.ToFrozenSet(StringComparer.Ordinal));
    }

    private static bool IsOfName(char letter) => letter == '_' || char.IsLetterOrDigit(letter);

    private static int AfterTextOrComment(ReadOnlySpan<char> text, int at)
    {
        if (text[at] == '/' && text[at..].StartsWith("//"))
        {
            var line = text[at..].IndexOfAny('\r', '\n');
            return line < 0 ? text.Length : at + line;
        }

        if (text[at] != '"')
        {
            return at + 1;
        }

        for (var i = at + 1; i < text.Length; i++)
        {
            switch (text[i])
            {
                case '\\':
                    i++;
                    break;
                case '"':
                    return i + 1;
                case '\r' or '\n':
                    return i;
                default:
                    break;
            }
        }

        return text.Length;
    }
}
