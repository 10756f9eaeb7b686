using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Tests.Plans;
using ProcScript.Analysis.Translations;
using ProcScript.Model;
using ProcScript.Model.Sources;
using ProcScript.Model.Texts;
using ProcScript.Syntax;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Tests.Translations;

public class TranslationTests
{
    private const string Press = """
        fastener bolt "M8 × 25 bolt"
        machine press "Press" {
          energy mains "230 V mains" { hazard high_voltage  isolate "Off."  restore "On." }
          control tap "tap" { open, shut }
          each side in left, right {
            part lid[side] "{side} lid" { held by 4 bolt as lid_bolts[side] { at "rear edge" } }
          }
          part spare_wheel
        }
        procedure lids_off "Lids off" on press {
          stage "Lids" {
            warning "Hot."
            isolate mains
            set tap to shut
            each side in left, right { undo lid_bolts[side]  remove lid[side] { how "Lift it." } }
            remove spare_wheel
          }
        }
        """;

    [Fact]
    public void A_text_is_known_by_where_it_stands_whatever_stands_around_it()
    {
        var keys = Keys(Press);

        Assert.Contains("machine.press:energy.mains:isolate.1", keys);
        Assert.Contains("machine.press:part.lid.side:joint.lid_bolts.side:at.1", keys);
        Assert.Contains("machine.press:part.spare_wheel:title", keys);
        Assert.Contains("procedure.lids_off:stage.1:remove.lid.side.1:how.1", keys);
        Assert.Contains("word:left", keys);
        Assert.Contains("word:shut", keys);
        Assert.Equal(keys, Keys("// A note.\n" + Press.Replace("\"Hot.\"", "\n\n\"Hot.\"", StringComparison.Ordinal)));
        Assert.Equal(keys.Distinct(), keys);
    }

    [Fact]
    public void A_plan_says_the_translations_and_marks_what_has_none()
    {
        var plan = Plan(Press, ("machine.press:part.lid.side:title", "{side} lid", "Deckel {side}"), ("word:left", "left", "links"), ("word:shut", "shut", "zu"));

        Assert.Contains("Deckel links ausbauen", plan.AllSteps().Select(step => step.Text));
        Assert.Contains("Deckel right ausbauen", plan.AllSteps().Select(step => step.Text));
        Assert.Contains("⁨tap⁩ auf „zu“ stellen", plan.AllSteps().Select(step => step.Text));
        Assert.Contains("⁨spare wheel⁩ ausbauen", plan.AllSteps().Select(step => step.Text));
        Assert.Equal(("de", "en", "⁨Lids⁩"), (plan.Language, plan.TextsLanguage, plan.Strip[0].Title));
    }

    [Fact]
    public void What_the_checks_and_the_cautions_read_is_what_the_author_wrote()
    {
        var english = PlanOf.Text(Press);
        var german = Plan(Press, ("machine.press:energy.mains:title", "230 V mains", "Netz"));

        Assert.StartsWith("Netzspannung tötet.", german.AllSteps().SelectMany(step => step.Alerts).First(alert => alert.IsUsual).Text, StringComparison.Ordinal);
        Assert.Equal(["high voltage"], german.Licensed);
        Assert.Equal(english.AllSteps().Select(step => (step.Number, step.Verb, step.Item, step.Count)), german.AllSteps().Select(step => (step.Number, step.Verb, step.Item, step.Count)));
        Assert.NotEqual(english.Revision, german.Revision);
    }

    [Fact]
    public void A_translation_of_an_earlier_wording_does_not_hold()
    {
        var plan = Plan(Press, ("procedure.lids_off:stage.1:warning.1", "Warm.", "Heiß."));

        Assert.Contains("⁨Hot.⁩", plan.AllSteps().SelectMany(step => step.Alerts).Select(alert => alert.Text));
    }

    [Fact]
    public void Texts_go_out_and_come_back_as_they_were()
    {
        TranslationUnit[] units =
        [
            new("a b/x.proc", "machine.m:title", "A < B & \"C\"\n- é", "Ä < Ö"),
            new("a b/x.proc", "machine.m:part.p:title", " p ", ""),
            new("y.proc", "word:left", "left", "links"),
        ];

        var read = XliffFile.Read(XliffFile.Write(units, "en", "de"));

        Assert.Equal(("", "en", "de"), (read.Problem, read.SourceLanguage, read.TargetLanguage));
        Assert.Equal(units, read.Units);
    }

    [Theory]
    [InlineData("", "it is no XML")]
    [InlineData("<a/>", "it is no XLIFF 2.1: its root is `a`")]
    [InlineData("<!DOCTYPE a [<!ENTITY b 'c'>]><a/>", "it is no XML")]
    [InlineData("<xliff version='1.2' xmlns='urn:oasis:names:tc:xliff:document:2.0'/>", "it is no XLIFF 2.1")]
    [InlineData("<xliff version='2.1' xmlns='urn:oasis:names:tc:xliff:document:2.0'><file id='f'><unit id='u'/></file></xliff>", "a file has no `original` or a unit no `name`")]
    public void What_is_no_file_of_translations_says_why(string text, string why) => Assert.StartsWith(why, XliffFile.Read(text).Problem, StringComparison.Ordinal);

    [Fact]
    public void Marks_come_off_again() => Assert.Equal("a b", LibraryTexts.Plain("a b"));

    private static List<string> Keys(string text) => [.. AuthorTextUnits.Of(SyntaxTree.Parse(new SourceText("x.proc", text))).Select(unit => unit.Key)];

    private static Plan Plan(string text, params (string Key, string Source, string Target)[] translations)
    {
        var xliff = XliffFile.Write(translations.Select(one => new TranslationUnit("x.proc", one.Key, one.Source, one.Target)), "en", "de");
        var store = new MemorySourceStore(
        [
            KeyValuePair.Create("x.proc", text),
            KeyValuePair.Create("procscript.json", """{ "language": "de" }"""),
            KeyValuePair.Create("texts/de.xlf", xliff),
        ]);
        var settings = Analysis.Settings.SettingsReader.Read(store);
        var report = LibraryCheck.Run(LibraryBinder.Bind(settings.Translation!.Over(store), TestContext.Current.CancellationToken), settings with { Translation = null }, TestContext.Current.CancellationToken);
        return report.Procedures[0].CreatePlan()!;
    }
}
