using System.Collections.Immutable;
using ProcScript.Analysis.Messages;
using ProcScript.Model.Texts;

namespace ProcScript.Analysis.Plans.Words;

/// <summary>Protective equipment that usual cautions name.</summary>
internal enum UsualGear
{
    /// <summary>Something before the eyes.</summary>
    Eyes,

    /// <summary>Something before the whole face.</summary>
    Face,

    /// <summary>Gloves against heat.</summary>
    HotHands,

    /// <summary>A strap that earths the wrist.</summary>
    Strap,
}

/// <summary>What it is called, and whether an author's own words name it.</summary>
internal static class UsualGears
{
    /// <summary>What a pack calls it.</summary>
    public static string Title(this UsualGear gear, Wordbook book) => book.Say(Message(gear));

    /// <summary>Whether what an author writes at <c>ppe</c> is that, by what packs call it in any language or by English words.</summary>
    public static bool IsNamedBy(this UsualGear gear, string ppe)
    {
        var plain = LibraryTexts.Plain(ppe);
        return gear.Words().Concat(PackLanguages.All.Select(language => gear.Title(Wordbook.In(language))))
            .Any(word => plain.Contains(word, StringComparison.OrdinalIgnoreCase));
    }

    private static string Message(UsualGear gear) => gear switch
    {
        UsualGear.Eyes => "ppe.eye-protection",
        UsualGear.Face => "ppe.face-shield",
        UsualGear.HotHands => "ppe.heat-gloves",
        _ => "ppe.wrist-strap",
    };

    /// <summary>The words by which English texts name it.</summary>
    public static ImmutableArray<string> Words(this UsualGear gear) => gear switch
    {
        UsualGear.Eyes => ["eye protection", "safety glasses", "goggles", "eyewear"],
        UsualGear.Face => ["face shield", "visor"],
        UsualGear.HotHands => ["heat-proof", "heat-resistant", "heat glove", "welding glove"],
        _ => ["wrist strap"],
    };
}
