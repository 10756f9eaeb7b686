using ProcScript.LanguageServer.Completing;
using ProcScript.LanguageServer.Jobs;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Reference;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;
using ProcScript.Syntax.Tokens;
using ProcScript.Syntax.Writing;

namespace ProcScript.LanguageServer.Features;

/// <summary>What a word that names nothing means: a word of the language, a unit, a position of a control.</summary>
internal static class WordHover
{
    /// <summary>The hover; null where there is nothing to tell.</summary>
    public static Hover? At(Asked asked, int offset, ReferenceWords reference)
    {
        var from = JobsInText.DeclarationAt(asked, offset)?.Span.Start ?? 0;
        if (UnitAt(asked, offset) is { } unit && reference.TellUnit(asked.Tree.Text.Slice(unit.Span).Replace('·', '.').Replace(" ", "", StringComparison.Ordinal)) is { } measured)
        {
            return Told(asked, measured, unit.Span);
        }

        var token = asked.Tree.TokensFrom(from).TakeWhile(one => one.Span.Start <= offset).LastOrDefault(one => one.Span.Touches(offset) && one.Category is TokenCategory.Keyword or TokenCategory.Name or TokenCategory.Number);
        if (token.Span.Length == 0)
        {
            return null;
        }

        var word = asked.Tree.Text.Slice(token.Span);
        var place = WritingPlace.At(asked.Tree.Text.Content, from, token.Span.Start);
        if (place.Next.FirstOrDefault(next => next.Sort == NextWordSort.Keyword && next.Word.Split(' ')[0] == word) is { } next
            && reference.Tell(next.Word, next.Frames, TypingPlace.BlockOf(next.Frames)) is { } told)
        {
            return Told(asked, told, token.Span);
        }

        var name = place.Next.FirstOrDefault(one => one.Sort == NextWordSort.Name);
        if (word == "none" && name is not null && reference.Tell(word, name.Frames, TypingPlace.BlockOf(name.Frames)) is { } none)
        {
            return Told(asked, none, token.Span);
        }

        return name is { Frames: [_, { Rule: "position" }, var owner, ..] }
            ? Told(asked, Position(asked, offset, owner, word), token.Span)
            : null;
    }

    private static Hover Told(Asked asked, string words, TextSpan span) => new(MarkupContent.Markdown(words), asked.Places.RangeOf(span));

    private static UnitSyntax? UnitAt(Asked asked, int offset) => JobsInText.DeclarationAt(asked, offset)?.DescendantsAndSelf()
        .OfType<UnitSyntax>().FirstOrDefault(unit => unit.Span.Length > 0 && unit.Span.Touches(offset));

    /// <summary>What a position is: where the control stands at home, and where else it can.</summary>
    private static string Position(Asked asked, int offset, WritingFrame owner, string word) =>
        owner.Rule == "controlBlock" ? $"position `{word}` of a control; the first is home"
        : JobsInText.MachineAt(asked, offset)?.Controls.FirstOrDefault(control => owner.Words.Contains(control.Name) && control.Positions.Contains(word)) is { } control
            ? Tell(control, word)
            : $"position `{word}` of a control";

    private static string Tell(Control control, string word) =>
        $"position `{word}` of `{control.Name}`: **{control.PositionTitles[control.Positions.IndexOf(word)]}**{(control.Positions[0] == word ? ", its home" : "")}\n\n"
        + $"Positions: {string.Join(", ", control.Positions.Select(position => $"`{position}`"))}";
}
