using ProcScript.Analysis.Rules;
using ProcScript.Analysis.Settings;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Tests.Prose;

public sealed class WordingTests
{
    private const string TwoInstructions = "Turn it to the left and pull the panel away.";

    [Fact]
    public void English_rules_can_be_switched_off_and_the_others_stay_on()
    {
        var text = Clip(TwoInstructions) + "\nclip b \"TODO\"";

        Assert.Equal(["PRC5101", "PRC5091"], Codes(text, english: true));
        Assert.Equal(["PRC5091"], Codes(text, english: false));
    }

    [Fact]
    public void Who_switches_the_english_rules_off_need_not_take_the_comments_out_that_allow_them()
    {
        var text = $"// proc: allow PRC5101 because \"One movement.\"\n{Clip(TwoInstructions)}";

        Assert.Empty(Codes(text, english: true));
        Assert.Empty(Codes(text, english: false));
        Assert.Equal(["PRC7002"], Codes("// proc: allow PRC5101 because \"No more.\"\n" + Clip("Pull."), english: true));
    }

    [Fact]
    public void A_text_in_a_loop_is_told_once() =>
        Assert.Equal(
            ["PRC5101"],
            Codes("clip pin \"pin\"\nmachine m \"M\" { each side in left, right { part p[side] \"p\" { held by 1 pin as j[side] { release \"Turn it left and pull the {side} tab.\" } } } }", english: true));

    [Theory]
    [InlineData("Set \\\"a\\\" and \\\\ first. You should wait.", "You should")]
    [InlineData("One.\\n\\nYou should wait.", "You should")]
    [InlineData("{{x} {{y. You should wait.", "You should")]
    public void A_finding_points_at_its_words_whatever_escapes_stand_before(string text, string words)
    {
        var source = Checked.Text(Clip(text));

        Assert.Equal($"1: {words}", source.At(source.OnlyFinding.Primary));
    }

    [Fact]
    public void Every_rule_of_wording_is_a_hint_but_the_one_that_belittles_an_injury() =>
        Assert.Equal(
            ["PRC5104"],
            RuleCatalog.All.OfType<ProseRule>().Where(rule => rule.Info.DefaultSeverity != Severity.Hint).Select(rule => rule.Info.Code));

    private static string Clip(string release) => $"clip a \"a\" {{ release \"{release}\" }}";

    private static IEnumerable<string> Codes(string text, bool english) => LibraryCheck
        .Run(MemorySourceStore.Of("x.proc", text), CheckSettings.Usual.With(SettingsTable.Wording, english ? WordingChoice.English : WordingChoice.Neutral), TestContext.Current.CancellationToken)
        .Findings.Select(found => found.Finding.Rule.Code);
}
