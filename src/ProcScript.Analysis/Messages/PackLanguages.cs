using System.Collections.Immutable;
using ProcScript.Analysis.Plans;

namespace ProcScript.Analysis.Messages;

/// <summary>What is told of the languages of work packs besides their messages.</summary>
public static class PackLanguages
{
    /// <summary>All of them.</summary>
    public static ImmutableArray<PackLanguage> All { get; } = [.. Enum.GetValues<PackLanguage>()];

    /// <summary>The tag that names a language in files and on the command line (BCP 47): <c>de</c>.</summary>
    public static string Tag(this PackLanguage language) => language switch
    {
        PackLanguage.German => "de",
        PackLanguage.French => "fr",
        PackLanguage.Spanish => "es",
        PackLanguage.Polish => "pl",
        _ => "en",
    };

    /// <summary>The language of a tag; null where packs are not written in it.</summary>
    public static PackLanguage? Find(string tag) => All.Select(language => (PackLanguage?)language).FirstOrDefault(language => language!.Value.Tag() == tag);

    /// <summary>The words of the language that a plan is written in; the English ones where packs are not written in it.</summary>
    public static Wordbook BookOf(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return Wordbook.In(Find(plan.Language) ?? PackLanguage.English);
    }

    /// <summary>Whether a sentence that stands within another begins small. In German it begins with what is worked on, a noun.</summary>
    internal static bool BeginsSmallWithin(this PackLanguage language) => language != PackLanguage.German;
}
