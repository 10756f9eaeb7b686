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

    [Theory]
    [InlineData("check \"{long}\"", "PRC5092")]
    [InlineData("measure \"{long}\"", "PRC5092")]
    [InlineData("task \"{two}\"", "PRC5101")]
    [InlineData("check \"b\"  while lid open because \"{long}\"", "PRC5092")]
    [InlineData("check \"b\"  while lid open because \"{two}\"", null)]
    [InlineData("caution \"The rim burns the skin. Wear gloves.\"  danger \"Mains voltage will kill you. Stand clear.\"  check \"b\"", "PRC5094")]
    public void The_texts_of_a_test_are_read_like_those_of_any_step(string items, string? code) =>
        Assert.Equal(code is null ? [] : [code], WordingCodes(Job($"test \"t\" {{ power mains  {Worded(items)} }}", "verify \"v\"")));

    [Theory]
    [InlineData("verify \"v\" at \"TODO\"", "test \"t\" { power mains  check \"b\" }", "PRC5091")]
    [InlineData("verify \"v\" at \"{two}\"", "test \"{two}\" { power mains  check \"b\" }", null)]
    [InlineData("verify \"v\"", "restore mains while lid open because \"{long}\"", "PRC5092")]
    public void Titles_and_places_are_no_instructions_and_a_reason_is_read(string verify, string rule, string? code) =>
        Assert.Equal(code is null ? [] : [code], WordingCodes(Job(Worded(rule), Worded(verify))));

    private static string Worded(string text) => text
        .Replace("{long}", string.Join(' ', Enumerable.Repeat("word", 60)), StringComparison.Ordinal)
        .Replace("{two}", TwoInstructions, StringComparison.Ordinal);

    private static string Job(string rule, string verify) => $$"""
        machine m "m" {
          energy mains "mains" { isolate "Pull the plug."  {{verify}}  restore "Put it in." }
          part lid "lid"
        }
        procedure p "p" on m {
          stage "s" { isolate mains  remove lid }
          refit { {{rule}} }
        }
        """;

    private static IEnumerable<string> WordingCodes(string text) =>
        Codes(text, english: true).Where(code => code.StartsWith("PRC509", StringComparison.Ordinal) || code.StartsWith("PRC51", StringComparison.Ordinal));

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
