using ProcScript.Analysis;
using ProcScript.Analysis.Settings;
using ProcScript.Model.Sources;

namespace ProcScript.Outside.Tests.Wording;

/// <summary>The rules of wording against what is published of ASD-STE100 and ANSI Z535. Sections are cited, for rule numbers move between issues.</summary>
public sealed class SimplifiedEnglishTests
{
    private const string TwoInstructionsCode = "PRC5101";
    private const string LongSentenceCode = "PRC5092";

    /// <summary>Procedural sentences: 20 words at most (ASD-STE100, section 5; a stored summary, read).</summary>
    [Fact]
    public void An_instruction_has_20_words_at_most() => Assert.Equal(20, SettingsTable.InstructionWords.BuiltIn);

    /// <summary>Descriptive sentences: 25 words, paragraphs 6 sentences at most (ASD-STE100, section 6; a public article, read; the numbers from memory).</summary>
    [Fact]
    public void A_description_has_25_words_a_sentence_and_6_sentences_a_paragraph_at_most()
    {
        Assert.Equal(25, SettingsTable.DescriptionWords.BuiltIn);
        Assert.Equal(6, SettingsTable.ParagraphSentences.BuiltIn);
    }

    /// <summary>
    /// Seventeen words and two instructions (counted by hand): within the length of section 5, and against its one instruction a sentence.
    /// </summary>
    [Fact]
    public void Seventeen_words_may_still_be_two_instructions() =>
        Assert.Equal([TwoInstructionsCode], Said("Remove the four bolts that hold the seat to the floor and put them in bag 3."));

    /// <summary>Filled up word by word: the twentieth is allowed, the twenty-first is not.</summary>
    [Theory]
    [InlineData(17, false)]
    [InlineData(20, false)]
    [InlineData(21, true)]
    [InlineData(30, true)]
    public void The_limit_lies_between_20_and_21_words(int words, bool isLong) =>
        Assert.Equal(isLong, Said($"Lift {string.Join(' ', Enumerable.Repeat("lid", words - 1))}.").Contains(LongSentenceCode));

    /// <summary>
    /// A word with hyphens, a number with its unit and an abbreviation are one word each (ASD-STE100, section 8; from memory): with 19 words
    /// before it, each of these fits, and two words do not.
    /// </summary>
    [Theory]
    [InlineData("counter-clockwise-turned", false)]
    [InlineData("22 N.m", false)]
    [InlineData("0.5 mm", false)]
    [InlineData("123 °C", false)]
    [InlineData("approx.", false)]
    [InlineData("two bolts", true)]
    public void What_is_one_word(string last, bool isLong) =>
        Assert.Equal(isLong, Said($"Lift {string.Join(' ', Enumerable.Repeat("lid", 18))} {last}.").Contains(LongSentenceCode));

    /// <summary>A condition comes first, with a comma (ASD-STE100, section 5; read).</summary>
    [Theory]
    [InlineData("If the seal is worn, replace it.", false)]
    [InlineData("Replace the seal if it is worn.", true)]
    public void The_condition_comes_first(string text, bool isSaid) => Assert.Equal(isSaid, Said(text).Contains("PRC5103"));

    /// <summary>Procedures command (ASD-STE100, section 5; read).</summary>
    [Theory]
    [InlineData("Remove the cover.", false)]
    [InlineData("The cover is to be removed.", true)]
    public void Procedures_command(string text, bool isSaid) => Assert.Equal(isSaid, Said(text).Contains("PRC5102"));

    /// <summary>
    /// ANSI Z535: damage alone is a NOTICE, an injury never is (digests of Z535.4-2007; read). Military manuals say CAUTION for damage
    /// (MIL-STD-38784 as explained on a mailing list of writers; read): here that is told.
    /// </summary>
    [Theory]
    [InlineData("notice", "A steel brush scratches the coating. Take the nylon one.", "")]
    [InlineData("caution", "A steel brush scratches the coating. Take the nylon one.", "PRC5105")]
    [InlineData("caution", "The edge cuts your fingers. Wear gloves.", "")]
    [InlineData("notice", "The edge cuts your fingers. Wear gloves.", "PRC5104")]
    [InlineData("warning", "The ram can kill. Block it.", "")]
    [InlineData("caution", "The ram can kill. Block it.", "PRC5104")]
    [InlineData("danger", "The ram can kill. Block it.", "PRC5105")]
    [InlineData("danger", "The ram will kill. Block it.", "")]
    [InlineData("warning", "The ram will kill. Block it.", "PRC5104")]
    public void The_word_fits_the_consequence(string word, string text, string code) =>
        Assert.Equal(code.Length == 0 ? [] : [code], SaidOf($$"""machine press "Press" { part ram "ram" { {{word}} "{{text}}" } }"""));

    private static IEnumerable<string> Said(string instruction) => SaidOf($$"""clip pin "pin" { release "{{instruction}}" }""");

    private static IEnumerable<string> SaidOf(string text) =>
        LibraryCheck.Run(MemorySourceStore.Of("x.proc", text)).Findings.Select(reported => reported.Finding.Rule.Code);
}
