using System.Collections.Frozen;
using System.Collections.Immutable;
using ProcScript.Analysis.Messages;
using ProcScript.Model.Figures;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Settings;

/// <summary>
/// Every setting, once: reading, <c>procscript config</c>, the schema and the reference follow from these rows. What is told besides is told
/// in <see cref="SettingsKeys"/>: what a file extends, its severities and its overrides.
/// </summary>
public static class SettingsTable
{
    /// <summary>What texts are held to.</summary>
    public static ChoiceSetting<WordingChoice> Wording { get; } = new()
    {
        Key = "wording",
        BuiltIn = WordingChoice.English,
        Words = [("english", WordingChoice.English), ("neutral", WordingChoice.Neutral)],
        What = "Whether texts are held to the rules that know English, or only to those that hold in any language. `--wording` outweighs it.",
        Rules = ["PRC5053", "PRC5054", "PRC5055", "PRC5058", "PRC5060", "PRC5101", "PRC5102", "PRC5103", "PRC5104", "PRC5105", "PRC5106", "PRC5107", "PRC5108", "PRC8004", "PRC8011", "PRC8101", "PRC8102", "PRC8103", "PRC8104", "PRC8105", "PRC8106"],
    };

    /// <summary>What one person lifts at most where everything is ideal.</summary>
    public static QuantitySetting OnePersonMass { get; } = new()
    {
        Key = "limits.onePersonMass",
        BuiltIn = Of(23, "kg"),
        Dimension = Dimension.Mass,
        Most = Of(23, "kg"),
        What = "The most that one person lifts where everything is ideal: the load constant of the lifting equation. Reach, height and the "
            + "like take from it as before, and what a team may lift follows.",
        Rules = ["PRC5061", "PRC5062"],
    };

    /// <summary>The share of the proof load above which a torque is too much.</summary>
    public static QuantitySetting StrongTorque { get; } = new()
    {
        Key = "limits.strongTorque",
        BuiltIn = Of(100, "%"),
        Dimension = Dimension.Ratio,
        Most = Of(100, "%"),
        What = "The top of the torque band: the share of a bolt's proof load that no torque may go beyond.",
        Rules = ["PRC5010"],
    };

    /// <summary>The share of the proof load below which a torque is weak.</summary>
    public static QuantitySetting WeakTorque { get; } = new()
    {
        Key = "limits.weakTorque",
        BuiltIn = Of(20, "%"),
        Dimension = Dimension.Ratio,
        Most = Of(75, "%"),
        What = "The bottom of the torque band: the share of a bolt's proof load below which a torque is called weak.",
        Rules = ["PRC5011"],
    };

    /// <summary>The shortest wait for a cure that is told.</summary>
    public static QuantitySetting CureWait { get; } = new()
    {
        Key = "limits.cureWait",
        BuiltIn = Of(15, "min"),
        Dimension = Dimension.Time,
        What = "How long a job stands still for a cure before it is worth a word.",
        Rules = ["PRC5033"],
    };

    /// <summary>The shortest wait before a restraint system.</summary>
    public static QuantitySetting RestraintWait { get; } = new()
    {
        Key = "limits.restraintWait",
        BuiltIn = Of(60, "s"),
        Dimension = Dimension.Time,
        Least = Of(60, "s"),
        What = "The least `wait` of an energy that can fire a restraint. A shorter one that the maker gives is allowed at its place, with its source.",
        Rules = ["PRC5042"],
    };

    /// <summary>The voltage up to which a circuit counts as dead.</summary>
    public static QuantitySetting SafeVoltage { get; } = new()
    {
        Key = "limits.safeVoltage",
        BuiltIn = Of(60, "V"),
        Dimension = Dimension.Voltage,
        Most = Of(60, "V"),
        What = "The most that the `verify` of a high-voltage energy of direct current may expect, and the voltage above which one counts as high.",
        Rules = ["PRC5044", "PRC5057", "PRC5059"],
    };

    /// <summary>The voltage of alternating current up to which a circuit counts as dead.</summary>
    public static QuantitySetting SafeVoltageAlternating { get; } = new()
    {
        Key = "limits.safeVoltageAlternating",
        BuiltIn = Of(30, "V"),
        Dimension = Dimension.Voltage,
        Most = Of(30, "V"),
        What = "The same of alternating current, and of an energy of which nothing says how its current flows.",
        Rules = ["PRC5044", "PRC5057", "PRC5059"],
    };

    /// <summary>The shortest wait before high voltage.</summary>
    public static QuantitySetting HighVoltageWait { get; } = new()
    {
        Key = "limits.highVoltageWait",
        BuiltIn = Of(5, "min"),
        Dimension = Dimension.Time,
        Least = Of(5, "min"),
        What = "The least `wait` of a high-voltage energy whose charge is stored. A shorter one that the maker gives is allowed at its place, with its source.",
        Rules = ["PRC5044"],
    };

    /// <summary>The words of a sentence that says what to do.</summary>
    public static CountSetting InstructionWords { get; } = new()
    {
        Key = "limits.instructionWords",
        BuiltIn = 20,
        Least = 5,
        Most = 100,
        What = "The most words of a sentence that says what to do or to check.",
        Rules = ["PRC5092"],
    };

    /// <summary>The words of a sentence that describes.</summary>
    public static CountSetting DescriptionWords { get; } = new()
    {
        Key = "limits.descriptionWords",
        BuiltIn = 25,
        Least = 5,
        Most = 100,
        What = "The most words of a sentence that warns or explains.",
        Rules = ["PRC5092"],
    };

    /// <summary>The sentences of a paragraph.</summary>
    public static CountSetting ParagraphSentences { get; } = new()
    {
        Key = "limits.paragraphSentences",
        BuiltIn = 6,
        Least = 1,
        Most = 50,
        What = "The most sentences of a paragraph in an alert or a reason.",
        Rules = ["PRC5093"],
    };

    /// <summary>The steps from which on a repeat is told.</summary>
    public static CountSetting RepeatedSteps { get; } = new()
    {
        Key = "limits.repeatedSteps",
        BuiltIn = 6,
        Least = 3,
        Most = 100,
        IsOfLibrary = true,
        What = "From how many equal steps on two procedures of a machine should share them by a `do`.",
        Rules = ["PRC6004"],
    };

    /// <summary>How many large fasteners make a part one that looks heavy.</summary>
    public static CountSetting MassBolts { get; } = new()
    {
        Key = "limits.massBolts",
        BuiltIn = 4,
        Least = 1,
        Most = 100,
        What = "From how many fasteners of M10, 3/8 in or larger a part that is lifted is asked for its mass.",
        Rules = ["PRC8003"],
    };

    /// <summary>How many fasteners of one joint ask for an order of tightening.</summary>
    public static CountSetting PatternFrom { get; } = new()
    {
        Key = "limits.patternFrom",
        BuiltIn = 8,
        Least = 3,
        Most = 100,
        What = "From how many fasteners with a torque on a joint is asked in what order they are tightened.",
        Rules = ["PRC8008"],
    };

    /// <summary>The size of a picture's file.</summary>
    public static CountSetting FigureKilobytes { get; } = new()
    {
        Key = "limits.figureKilobytes",
        BuiltIn = 4000,
        Least = 1,
        Most = (int)(FigureLimits.MostBytes / 1000),
        What = "The most kilobytes (of 1000 bytes) that the file of a picture may have. It goes into the pack as it is, without the notes of the camera.",
        Rules = ["PRC1144"],
    };

    /// <summary>The size of a picture.</summary>
    public static CountSetting FigureMegapixels { get; } = new()
    {
        Key = "limits.figureMegapixels",
        BuiltIn = 50,
        Least = 1,
        Most = 500,
        What = "The most megapixels that a picture may have, by what its header says.",
        Rules = ["PRC1144"],
    };

    /// <summary>The language of the packs.</summary>
    public static ChoiceSetting<PackLanguage> Language { get; } = new()
    {
        Key = "language",
        BuiltIn = PackLanguage.English,
        Words = [.. PackLanguages.All.Select(language => (language.Tag(), language))],
        What = "The language that work packs say by themselves what they say: headings, verbs, cautions, lists. `--language` outweighs it. The author's "
            + "own words stand as they are, or as they are translated. Findings are English.",
    };

    /// <summary>The language of the authors.</summary>
    public static ChoiceSetting<PackLanguage> TextsLanguage { get; } = new()
    {
        Key = "texts.language",
        BuiltIn = PackLanguage.English,
        Words = [.. PackLanguages.All.Select(language => (language.Tag(), language))],
        What = "The language that the authors write in. Packs in another take the authors' texts from the translations.",
        Rules = ["PRC7022"],
        IsOfLibrary = true,
    };

    /// <summary>Where the translations lie.</summary>
    public static FolderSetting TextsFolder { get; } = new()
    {
        Key = "texts.folder",
        BuiltIn = "texts",
        What = "The folder, from the library's root, with the translations of the authors' texts: `de.xlf` and so on, in XLIFF 2.1. "
            + "`procscript texts` writes and reads them.",
        Rules = ["PRC7022"],
        IsOfLibrary = true,
    };

    /// <summary>The unit of torque that comes first.</summary>
    public static ChoiceSetting<TorqueUnit> Torque { get; } = new()
    {
        Key = "units.torque",
        BuiltIn = TorqueUnit.AsWritten,
        Words = [("as written", TorqueUnit.AsWritten), ("N.m", TorqueUnit.NewtonMetre), ("lbf.ft", TorqueUnit.PoundForceFoot)],
        What = "The unit that cards give a torque in first: the author's, or one for the whole shop; the other follows in brackets. The range of a "
            + "torque wrench to bring is given in the first alone. All else is printed in the unit that it was written in.",
    };

    /// <summary>What bag labels are printed on.</summary>
    public static ChoiceSetting<LabelStock> Labels { get; } = new()
    {
        Key = "labels",
        BuiltIn = LabelStock.Plain,
        Words =
        [
            ("plain", LabelStock.Plain), ("70x36", LabelStock.A4Of24), ("70x37", LabelStock.A4Of24WithoutMargins), ("105x57", LabelStock.A4Of10),
            ("99.1x67.7", LabelStock.A4Of8), ("101.6x50.8", LabelStock.LetterOf10), ("101.6x84.7", LabelStock.LetterOf6),
        ],
        What = "What bag labels are printed on: the plain paper of the pack, or sheets of labels, in a file of their own. The figures are the width and height of a "
            + "label in mm; the last two are sheets of US Letter, the others of A4. `--labels` outweighs it.",
    };

    /// <summary>What every bench has.</summary>
    public static TextsSetting HouseTools { get; } = new()
    {
        Key = "houseTools",
        BuiltIn = [],
        What = "Tools that every bench has, by name or by title in any case of letters. A pack lists them last among what to bring, as such, and its "
            + "steps name them as all others. In the catalog they need no user.",
        Rules = ["PRC6001"],
    };

    /// <summary>How the cards lie on their sheets.</summary>
    public static ChoiceSetting<CardLayout> Layout { get; } = new()
    {
        Key = "cards.layout",
        BuiltIn = CardLayout.Flow,
        Words = [("flow", CardLayout.Flow), ("card", CardLayout.Card)],
        What = "How cards are printed: one after the other, as many on a sheet as it holds, or each on sheets of its own. `--layout` outweighs it.",
    };

    /// <summary>All rows, in the order in which they are told.</summary>
    public static ImmutableArray<Setting> All { get; } =
    [
        Wording,
        OnePersonMass,
        StrongTorque,
        WeakTorque,
        CureWait,
        RestraintWait,
        SafeVoltage,
        SafeVoltageAlternating,
        HighVoltageWait,
        InstructionWords,
        DescriptionWords,
        ParagraphSentences,
        RepeatedSteps,
        MassBolts,
        PatternFrom,
        FigureKilobytes,
        FigureMegapixels,
        Language,
        TextsLanguage,
        TextsFolder,
        Torque,
        Labels,
        HouseTools,
        Layout,
        .. NamingSettings.All,
    ];

    private static readonly FrozenDictionary<string, Setting> ByKey = All.ToFrozenDictionary(setting => setting.Key, StringComparer.Ordinal);

    /// <summary>The setting of that name, or null.</summary>
    public static Setting? Find(string key) => ByKey.GetValueOrDefault(key);

    private static Quantity Of(double value, string unit) => new(value, value, value, Units.Find(unit)!, QuantityForm.Plain);
}
