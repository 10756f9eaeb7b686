using System.Collections.Immutable;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Model;
using ProcScript.Model.Catalog;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Tools;

/// <summary>
/// What marks are made with before things come apart: by a punch, a scriber or chalk where the mark says so and the catalog has one, else by a paint
/// marker, which cards name themselves where the catalog has none. What is tied or stuck on asks for none. English words; common practice, no source.
/// </summary>
/// <param name="All">The tools that a procedure can see.</param>
internal sealed record Markers(ImmutableArray<Tool> All)
{
    private static readonly ImmutableArray<string> Paint = [" marker ", " paint pen ", " paint stick ", " marking pen "];
    private static readonly ImmutableArray<(string Said, string Title)> Own = [("punch", " punch "), ("scribe", " scriber "), ("scratch", " scriber "), ("chalk", " chalk ")];
    private static readonly ImmutableArray<string> Without = ["tape", "tag", "label", "notch", "already"];

    /// <summary>Those of a procedure.</summary>
    public static Markers Of(Procedure procedure, Library library) => new([.. library.Tools.Where(tool => procedure.Sees(tool.Declared.Path))]);

    /// <summary>What heads are marked with before they are turned by an angle.</summary>
    public string Paints(Wordbook book) => First(Paint) is { } tool ? ItemWords.Of(tool, book) : book.Say("tool.marker");

    /// <summary>What a mark is made with; null where it asks for nothing.</summary>
    public string? For(string mark, Wordbook book)
    {
        foreach (var (said, title) in Own)
        {
            if (mark.Contains(said, StringComparison.OrdinalIgnoreCase))
            {
                return First([title]) is { } tool ? ItemWords.Of(tool, book) : null;
            }
        }

        return Without.Any(word => mark.Contains(word, StringComparison.OrdinalIgnoreCase)) ? null : Paints(book);
    }

    private Tool? First(ImmutableArray<string> words) => All.FirstOrDefault(tool => TitleWords.Has(tool, words));
}
