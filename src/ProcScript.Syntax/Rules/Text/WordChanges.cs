using System.Globalization;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Parsing;
using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Rules.Text;

/// <summary>Findings of <see cref="UnexpectedText"/> whose cure changes several words at once.</summary>
internal static class WordChanges
{
    /// <summary>A word that joins where a comma does.</summary>
    public static Finding AndForComma(SourceText text, TextSpan previous, TextSpan word) =>
        new(UnexpectedText.Id, $"{Excerpt.Of(text, word)} is not a word of the language", Place(text, word), "did you mean `,`?")
        {
            Help = "what belongs together is parted by commas",
            Fixes = [Needs("Write `,`", new TextEdit(Place(text, TextSpan.FromBounds(previous.End, word.End)), ","))],
        };

    /// <summary>One verb for several items.</summary>
    /// <param name="text">The text.</param>
    /// <param name="previous">The word before the comma.</param>
    /// <param name="comma">The comma.</param>
    /// <param name="verb">The verb.</param>
    /// <param name="items">Every comma, and what stands behind it.</param>
    public static Finding SeveralItems(SourceText text, TextSpan previous, TextSpan comma, string verb, IReadOnlyList<(TextSpan Sign, TextSpan Item)> items)
    {
        return new Finding(UnexpectedText.Id, $"`{verb}` takes one item", Place(text, comma), $"`{verb}` is missing behind this")
        {
            Help = $"write `{verb}` before each",
            Fixes = [Needs($"Write `{verb}` before each", [.. items.Select(item => new TextEdit(Place(text, Gap(item)), Between(item)))])],
        };

        // Behind a blank, a sign that is a word takes that with it.
        TextSpan Gap((TextSpan Sign, TextSpan Item) item)
        {
            var start = item.Sign.Start;
            while (start > previous.End && text.Content[start - 1] == ' ')
            {
                start--;
            }

            return TextSpan.FromBounds(start, item.Item.Start);
        }

        string Between((TextSpan Sign, TextSpan Item) item) =>
            text.LineAt(item.Sign.Start) == text.LineAt(item.Item.Start)
                ? $"  {verb} "
                : text.Slice(TextSpan.FromBounds(item.Sign.End, item.Item.Start)) + verb + " ";
    }

    /// <summary>Several words where one name is meant.</summary>
    public static Finding NameOfWords(SourceText text, TextSpan words)
    {
        var name = RepairSearch.NameOf(text.Slice(words));
        return new Finding(UnexpectedText.Id, $"{Excerpt.Of(text, words)} is no name: a name is one word", Place(text, words), $"did you mean `{name}`?")
        {
            Help = "join the words of a name with `_`",
            Fixes = [Needs($"Write `{name}`", new TextEdit(Place(text, words), name))],
        };
    }

    /// <summary>Two words that have changed places.</summary>
    public static Finding Swapped(SourceText text, TextSpan first, TextSpan second)
    {
        var (one, other) = (Excerpt.Of(text, first), Excerpt.Of(text, second));
        return new Finding(UnexpectedText.Id, $"{other} belongs before {one}", Place(text, first.Cover(second)))
        {
            Fixes = [Needs($"Write {other} first", new TextEdit(Place(text, first), text.Slice(second)), new TextEdit(Place(text, second), text.Slice(first)))],
        };
    }

    /// <summary>Brackets of the other sort.</summary>
    public static Finding OtherBrackets(SourceText text, TextSpan opening, TextSpan? closing, bool isIndex)
    {
        var (first, last) = isIndex ? ("[", "]") : ("(", ")");
        return new Finding(UnexpectedText.Id, $"{Excerpt.Of(text, opening)} cannot stand here", Place(text, opening), $"did you mean `{first}`?")
        {
            Help = isIndex ? "an index stands in `[…]`" : "parameters and what is given for them stand in `(…)`",
            Fixes = [Needs($"Write `{first}{last}`", [new TextEdit(Place(text, opening), first), .. closing is { } end ? [new TextEdit(Place(text, end), last)] : Array.Empty<TextEdit>()])],
        };
    }

    /// <summary>A text without its quotes.</summary>
    public static Finding TextWithoutQuotes(SourceText text, TextSpan words) =>
        new(UnexpectedText.Id, $"{Excerpt.Of(text, words)} cannot stand here", Place(text, words), "a text stands between double quotes")
        {
            Help = $"write `\"{text.Slice(words)}\"`",
            Fixes = [Needs("Put it in quotes", new TextEdit(Place(text, new TextSpan(words.Start, 0)), "\""), new TextEdit(Place(text, new TextSpan(words.End, 0)), "\""))],
        };

    /// <summary>The title of a procedure behind its machine.</summary>
    public static Finding TitleTooLate(SourceText text, TextSpan on, TextSpan title)
    {
        var gap = title.Start;
        while (text.Content[gap - 1] is ' ' or '\t')
        {
            gap--;
        }

        return new Finding(UnexpectedText.Id, $"the title {Excerpt.Of(text, title)} stands too late", Place(text, title), "it belongs before `on`")
        {
            Fixes =
            [
                Needs(
                    "Write the title before `on`",
                    new TextEdit(Place(text, new TextSpan(on.Start, 0)), text.Slice(title) + " "),
                    new TextEdit(Place(text, TextSpan.FromBounds(gap, title.End)), "")),
            ],
        };
    }

    /// <summary>A joint that ends behind its kind.</summary>
    public static Finding JointWithoutName(SourceText text, TextSpan kind, string name) =>
        new(UnexpectedText.Id, $"`as` and a name are missing behind {Excerpt.Of(text, kind)}", Place(text, kind))
        {
            Help = "steps call it by its name",
            Fixes = [Needs($"Insert `as {name}`", new TextEdit(Place(text, new TextSpan(kind.End, 0)), $" as {name}"))],
        };

    /// <summary>A verb alone on its line.</summary>
    public static Finding BareVerb(SourceText text, TextSpan verb, string what)
    {
        var line = text.LineAt(verb.Start);
        var end = line + 1 < text.LineCount ? text.LineSpan(line + 1).Start : text.Content.Length;
        return new Finding(UnexpectedText.Id, $"{what} is missing behind {Excerpt.Of(text, verb)}", Place(text, verb))
        {
            Help = "name what it is done to, or take the line out",
            Fixes = [Needs("Take the line out", new TextEdit(Place(text, TextSpan.FromBounds(text.LineSpan(line).Start, end)), ""))],
        };
    }

    /// <summary>A number before a step.</summary>
    /// <param name="text">The text.</param>
    /// <param name="gone">The number and the blanks behind it.</param>
    /// <param name="number">The number with its sign.</param>
    public static Finding Numbered(SourceText text, TextSpan gone, TextSpan number) =>
        new(UnexpectedText.Id, $"{Excerpt.Of(text, number)} does not belong here: the cards number the steps", Place(text, number))
        {
            Help = "leave the number out",
            Fixes = [Needs($"Remove {Excerpt.Of(text, number)}", new TextEdit(Place(text, gone), ""))],
        };

    /// <summary>A count in words.</summary>
    internal static Finding NumberInWords(SourceText text, TextSpan word, int number)
    {
        var digits = number.ToString(CultureInfo.InvariantCulture);
        return new Finding(UnexpectedText.Id, $"{Excerpt.Of(text, word)} cannot stand here: a count is written in figures", Place(text, word))
        {
            Fixes = [new Fix($"Write `{digits}`", FixGrade.NeedsLook, [new TextEdit(Place(text, word), digits)])],
        };
    }

    private static Fix Needs(string title, params TextEdit[] edits) => new(title, FixGrade.NeedsLook, [.. edits]);

    private static SourceSpan Place(SourceText text, TextSpan span) => new(text.Path, span);
}
