using ProcScript.LanguageServer.Completing;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Writing;

namespace ProcScript.LanguageServer.Reference;

/// <summary>What the reference says, in Markdown, for hovers and beside what is offered.</summary>
/// <param name="page">Where the page lies.</param>
internal sealed class ReferenceWords(ReferencePage page)
{
    /// <summary>What a word of the language means where it stands; null for a word that the reference has not.</summary>
    /// <param name="word">The word, with those that always follow it.</param>
    /// <param name="frames">The rules that it stands in, the innermost first.</param>
    /// <param name="block">The block around it.</param>
    public string? Tell(string word, IEnumerable<WritingFrame> frames, string block) =>
        (frames.FirstOrDefault() is { Rule: "procedureDeclaration" or "forVariants" } ? LanguageReference.Of("procedure") : LanguageReference.Of(word, SortsIn([.. frames.Select(frame => frame.Rule)], block)))
            is { } entry ? Tell(entry) : null;

    /// <summary>What a unit measures.</summary>
    public string? TellUnit(string unit) => LanguageReference.Of(unit, "unit") is { Sort: "unit" } entry && Units.Find(unit) is { } known
        ? Tell(entry with { Means = $"{known.Symbol}, {known.Dimension.WithArticle()}" })
        : null;

    private string Tell(ReferenceEntry entry)
    {
        var head = entry.Sort.Length == 0 ? $"`{entry.Usage}`" : $"`{entry.Usage}`, {entry.Sort}";
        var example = entry.Example != entry.Usage ? $"\n\n```proc\n{entry.Example}\n```" : "";
        var name = $"The ProcScript language: {entry.Section}";
        return $"{head}\n\n{entry.Means}{example}\n\n{(page.UriOf(entry.Line) is { } uri ? $"[{name}]({uri})" : name)}";
    }

    /// <summary>What a word may be where it stands, the likeliest first.</summary>
    private static string[] SortsIn(string[] rules, string block)
    {
        var rule = Array.Find(rules, one => one is "actionVerb" or "snugVerb" or "verb" or "need" or "property" or "clause" or "inlineClause" or "cover" or "alert"
            or "catalogDeclaration" or "stripStep" or "textAction" or "recordAction" or "pauseAction" or "asideClause" or "energyDeclaration" or "fluidDeclaration");
        string[] properties = block switch
        {
            "energy" or "verify" => ["property of an energy", "property", "clause"],
            "fluid" => ["property of a fluid", "property", "clause"],
            "part" or "held" or "wired" or "piped" or "covered" or "locked" or "control" => ["clause", "property"],
            TypingPlace.Action or TypingPlace.TextAction or TypingPlace.ActionInRefit or "procedure" => ["property of an action", "property", "clause"],
            _ => ["property", "clause", "property of an action"],
        };
        return rule switch
        {
            "actionVerb" or "snugVerb" or "verb" or "stripStep" when block == "refit" => ["refit verb", "strip verb", "action"],
            "actionVerb" or "snugVerb" or "verb" or "stripStep" => ["strip verb", "refit verb", "action"],
            "textAction" or "recordAction" or "pauseAction" => ["action"],
            "need" => ["condition"],
            "alert" => ["word", .. properties],
            "catalogDeclaration" => ["declaration"],
            "asideClause" => ["clause"],
            "property" or "clause" or "inlineClause" or "cover" => [.. properties, "word", "condition"],
            _ => [],
        };
    }
}
