using CsCheck;
using ProcScript.Analysis.Settings;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Tests.Settings;

/// <summary>From the text of a settings file to what holds for a path.</summary>
public sealed class SettingsReaderTests
{
    private static readonly RuleInfo LongSentence = RuleCatalog.Find("long-sentence")!.Info;
    private static readonly RuleInfo LongParagraph = RuleCatalog.Find("long-paragraph")!.Info;

    [Fact]
    public void Without_a_file_all_is_as_built_in()
    {
        var settings = Read();

        Assert.Empty(settings.Findings);
        Assert.All(SettingsTable.All, setting => Assert.Equal((setting.BuiltInValue, SettingOrigin.BuiltIn), settings.For("a.proc").Look(setting)));
        Assert.All(RuleCatalog.All, rule => Assert.Equal(rule.Info.DefaultSeverity, settings.For("a.proc").SeverityOf(rule.Info)));
    }

    [Theory]
    [InlineData("")]
    [InlineData(" \n")]
    [InlineData("// nothing yet\n/* at\nall */")]
    [InlineData("{}")]
    [InlineData("{ /* empty */ }")]
    public void A_file_may_choose_nothing(string text) => Assert.Empty(Read(("procscript.json", text)).Findings);

    [Fact]
    public void A_rule_by_itself_outweighs_its_family_in_any_order()
    {
        foreach (var text in new[] { """{ "severities": { "PRC5xxx": "off", "long-sentence": "error" } }""", """{ "severities": { "PRC5092": "error", "5xxx": "off" } }""" })
        {
            var chosen = Read(("procscript.json", text)).Everywhere;

            Assert.Equal(Severity.Error, chosen.SeverityOf(LongSentence));
            Assert.Null(chosen.SeverityOf(LongParagraph));
        }
    }

    [Fact]
    public void What_is_an_error_by_itself_stays_one_whatever_is_written()
    {
        var all = string.Join(", ", RuleCatalog.All.Select(rule => $"\"{rule.Info.Code}\": \"off\""));
        var chosen = Read(("procscript.json", $$"""{ "severities": { {{all}}, "1xxx": "off", "2xxx": "hint", "3xxx": "off", "4xxx": "warning", "5xxx": "off", "7xxx": "off" } }""")).Everywhere;

        Assert.All(
            RuleCatalog.All.Where(rule => rule.Info.DefaultSeverity == Severity.Error),
            rule => Assert.Equal(Severity.Error, chosen.SeverityOf(rule.Info)));
    }

    [Fact]
    public void The_file_outweighs_what_it_extends_and_a_later_one_an_earlier()
    {
        var settings = Read(
            ("procscript.json", """{ "extends": ["shop/a.json", "shop/b.json"], "limits": { "cureWait": "1 h" } }"""),
            ("shop/a.json", """{ "limits": { "cureWait": "2 h", "weakTorque": "10 %", "instructionWords": 10 } }"""),
            ("shop/b.json", """{ "limits": { "cureWait": "3 h", "instructionWords": 12 } }"""));

        Assert.Empty(settings.Findings);
        Assert.Equal(3600, settings.Everywhere.Get(SettingsTable.CureWait).BaseValue);
        Assert.Equal(0.1, settings.Everywhere.Get(SettingsTable.WeakTorque).BaseValue, 1e-12);
        Assert.Equal(12, settings.Everywhere.Get(SettingsTable.InstructionWords));
        Assert.Equal("shop/b.json", settings.Everywhere.Look(SettingsTable.InstructionWords).Origin.Place!.Value.Path);
    }

    [Theory]
    [InlineData("press/press.proc", WordingChoice.Neutral, 10)]
    [InlineData("press/deep/press.proc", WordingChoice.Neutral, 10)]
    [InlineData("press/special.proc", WordingChoice.English, 30)]
    [InlineData("presses/press.proc", WordingChoice.English, 20)]
    [InlineData("drafts/fi/a-fi.proc", WordingChoice.Neutral, 20)]
    [InlineData("", WordingChoice.English, 20)]
    public void The_last_override_that_matches_wins(string path, WordingChoice wording, int words)
    {
        var chosen = Read(("procscript.json", """
            {
              "overrides": [
                { "paths": ["press/**", "**/*-fi.proc"], "wording": "neutral" },
                { "paths": "press/**", "limits": { "instructionWords": 10 } },
                { "paths": "press/special.proc", "wording": "english", "limits": { "instructionWords": 30 } }
              ]
            }
            """)).For(path);

        Assert.Equal((wording, words), (chosen.Get(SettingsTable.Wording), chosen.Get(SettingsTable.InstructionWords)));
    }

    [Fact]
    public void Places_are_those_of_characters_not_of_bytes()
    {
        const string Text = "{ /* «überall» */ \"limits\": { \"cureWait\": \"µ\", \"näher\": 1 } }";
        var settings = Read(("procscript.json", Text));

        Assert.Equal(["\"µ\"", "\"näher\""], settings.Findings.Select(finding => Text.Substring(finding.Primary.Span.Start, finding.Primary.Span.Length)));
    }

    [Fact]
    public void Files_that_extend_each_other_many_times_over_are_read_once()
    {
        // Each level names the next one twice: two to the power of forty ways.
        var files = Enumerable.Range(0, 40).Select(i => ($"s{i}.json", $$"""{ "extends": ["s{{i + 1}}.json", "s{{i + 1}}.json"] }"""));
        var settings = Read([("procscript.json", """{ "extends": "s0.json" }"""), .. files, ("s40.json", """{ "wording": "neutral" }""")]);

        Assert.Empty(settings.Findings);
        Assert.Equal(WordingChoice.Neutral, settings.Everywhere.Get(SettingsTable.Wording));
    }

    [Fact]
    public void Any_text_gives_settings_and_places_inside_it()
    {
        const string Text = """{ "extends": "a.json", "limits": { "cureWait": "5 µm" }, "severities": { "5xxx": "off" }, "overrides": [{ "paths": "**" }] } // \ud800 ü""";
        var slice = Gen.Select(Gen.Int[0, Text.Length], Gen.Int[0, Text.Length], Gen.String[0, 3]);
        slice.Sample(
            cut =>
            {
                var (start, end) = (Math.Min(cut.Item1, cut.Item2), Math.Max(cut.Item1, cut.Item2));
                var text = Text[..start] + cut.Item3 + Text[end..];
                var settings = Read(("procscript.json", text));
                Assert.All(settings.Findings, finding => Assert.InRange(finding.Primary.Span.End, finding.Primary.Span.Start, text.Length));
            },
            iter: 2000);
    }

    [Theory]
    [InlineData("\"\\ud800\"")]
    [InlineData("{ \"wording\": \"\\udc00\" }")]
    [InlineData("{ \"\\ud800\": 1 }")]
    [InlineData("[")]
    [InlineData("{} {}")]
    public void What_is_no_json_is_one_finding(string text) =>
        Assert.Equal(["PRC7010"], Read(("procscript.json", text)).Findings.Select(finding => finding.Rule.Code));

    [Fact]
    public void Nesting_without_end_is_a_finding() =>
        Assert.Equal(["PRC7010"], Read(("procscript.json", new string('[', 100_000))).Findings.Select(finding => finding.Rule.Code));

    private static CheckSettings Read(params (string Path, string Text)[] files) => SettingsReader.Read(
        new MemorySourceStore(files.Select(file => KeyValuePair.Create(file.Path, file.Text))));
}
