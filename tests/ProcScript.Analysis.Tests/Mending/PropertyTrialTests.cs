using ProcScript.Analysis.Mending;
using ProcScript.Model.Sources;
using ProcScript.Syntax;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Tests.Mending;

/// <summary>Properties written into blocks of every sort, and those that must not be.</summary>
public sealed class PropertyTrialTests
{
    private const string Catalog = """
        tool socket_13 "13 mm socket" { size 13 mm }
        tool lamp "work lamp"
        clip pin "pin" { tool socket_13 }
        clip cap "cap"
        fastener m8 "M8 bolt" { drive socket_13 }

        """;

    private const string Machine = """
        machine tank "tank" {
          option rail "rail"
          part lid "lid" { held by 4 m8 as lid_bolts }
          part base "base" { held by 2 m8 as base_bolts covered by 2 cap as base_caps { at "below" } }
          part pump "pump" { mass 2 kg  behind lid  held by 3 pin as pump_pins at "rim" { keep in order } }
        }

        """;

    private const string Procedure = """
        procedure pump_out "Take the pump out" on tank {
          goal remove pump
          stage "Lid" { undo lid_bolts { when rail { time 9 s } }  remove lid { } }
          stage "Pump" {
            release pump_pins {
              how "Lift the heads."
              refit { how "Push." }
            }
            remove pump { time 20 s  tool socket_13  refit { time 1 min } }
          }
          refit { check "No drip." after fit pump }
        }

        """;

    private const string Text = Catalog + Machine + Procedure;

    [Theory]
    [InlineData("remove pump {*}", "time", "3 min", false, "remove pump { time 3 min  tool socket_13  refit { time 1 min } }")]
    [InlineData("remove pump {*}", "time", "3 min", true, "remove pump { time 20 s  tool socket_13  refit { time 3 min } }")]
    [InlineData("remove pump {*}", "tool", "lamp", false, "remove pump { time 20 s  tool socket_13, lamp  refit { time 1 min } }")]
    [InlineData("remove pump {*}", "tool", "lamp", true, "refit { tool lamp  time 1 min }")]
    [InlineData("remove lid {*}", "people", "2", false, "remove lid { people 2 }")]
    [InlineData("remove lid {*}", "how", "\"Mind the rim.\"", true, "remove lid { refit { how \"Mind the rim.\" } }")]
    [InlineData("release pump_pins {*}", "how", "\"All.\"", false, "how \"Lift the heads.\"\n      how \"All.\"\n      refit { how \"Push.\" }")]
    [InlineData("release pump_pins {*}", "how", "\"All.\"", true, "refit { how \"Push.\"  how \"All.\" }")]
    [InlineData("release pump_pins {*}", "time", "9 s", false, "release pump_pins {\n      time 9 s\n      how \"Lift the heads.\"")]
    [InlineData("check \"No drip.\" after fit pump", "time", "2 min", false, "check \"No drip.\" after fit pump { time 2 min }")]
    [InlineData("lid_bolts", "time", "9 s", false, "held by 4 m8 as lid_bolts { time 9 s }")]
    [InlineData("base_bolts", "time", "9 s", false, "held by 2 m8 as base_bolts { time 9 s  covered by 2 cap as base_caps { at \"below\" } }")]
    [InlineData("base_caps", "time", "9 s", false, "base_caps { time 9 s  at \"below\" }")]
    [InlineData("pump_pins", "time", "9 s", false, "held by 3 pin as pump_pins at \"rim\" { time 9 s  keep in order }")]
    [InlineData("pump", "time", "9 s", false, "part pump \"pump\" { time 9 s  mass 2 kg")]
    [InlineData("pin", "spare", "10 %", false, "clip pin \"pin\" { spare 10 %  tool socket_13 }")]
    [InlineData("cap", "spare", "10 %", false, "clip cap \"cap\" { spare 10 % }")]
    [InlineData("pump_out", "tool", "lamp", false, "  goal remove pump\n  tool lamp\n  stage")]
    public void A_property_is_written_where_its_like_stands_or_first(string owner, string keyword, string value, bool ofRefit, string written)
    {
        var report = Run(Change(owner, keyword, value, ofRefit));

        Assert.Empty(report.Refused);
        Assert.Contains(written, Assert.Single(report.Files).After, StringComparison.Ordinal);
        Assert.DoesNotContain(report.After.Findings, found => found.Severity == Syntax.Findings.Severity.Error);
        Assert.Single(report.Fixes);
    }

    [Fact]
    public void Several_for_one_block_are_written_together()
    {
        var report = Run(
            Change("remove lid {*}", "time", "9 s"), Change("remove lid {*}", "tool", "lamp"), Change("remove lid {*}", "time", "8 s", true),
            Change("base_bolts", "time", "7 s"), Change("base_caps", "time", "6 s"), Change("pin", "time", "5 s"), Change("pin", "spare", "10 %"));
        var after = Assert.Single(report.Files).After;

        Assert.Empty(report.Refused);
        Assert.Contains("remove lid { time 9 s  tool lamp  refit { time 8 s } }", after, StringComparison.Ordinal);
        Assert.Contains("base_bolts { time 7 s  covered by 2 cap as base_caps { time 6 s  at \"below\" } }", after, StringComparison.Ordinal);
        Assert.Contains("clip pin \"pin\" { time 5 s  spare 10 %  tool socket_13 }", after, StringComparison.Ordinal);
    }

    [Fact]
    public void What_would_bring_an_error_is_refused_and_the_rest_is_written()
    {
        var (bad, good) = (Change("remove lid {*}", "tool", "nothing_of_the_kind"), Change("remove lid {*}", "time", "9 s"));
        var report = Run(bad, good);

        Assert.StartsWith("it would bring an error, PRC", report.Refused[bad], StringComparison.Ordinal);
        Assert.Equal([good], report.Fixes.Keys);
        Assert.Contains("remove lid { time 9 s }", Assert.Single(report.Files).After, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_written_under_a_condition_is_left()
    {
        var change = Change("undo lid_bolts {*}", "time", "9 s");
        var report = Run(change);

        Assert.Equal("its `time` stands under `when`", report.Refused[change]);
        Assert.Empty(report.Files);
    }

    [Fact]
    public void A_file_that_is_only_used_is_left_and_one_that_was_not_laid_out_stays_so()
    {
        var change = Change("pin", "spare", "10 %");
        var used = PropertyTrial.Run(Store(Text), CheckSettings.Usual, _ => false, _ => [change], TestContext.Current.CancellationToken);
        var loose = Text.Replace("clip cap \"cap\"", "clip   cap   \"cap\"", StringComparison.Ordinal);
        var after = PropertyTrial.Run(Store(loose), CheckSettings.Usual, _ => true, _ => [change], TestContext.Current.CancellationToken).Files.Single().After;

        Assert.Equal("its file is only used by what was named; name it too", used.Refused[change]);
        Assert.Contains("clip   cap   \"cap\"", after, StringComparison.Ordinal);
        Assert.Contains("clip pin \"pin\" { spare 10 %  tool socket_13 }", after, StringComparison.Ordinal);
    }

    private static PropertyReport Run(params PropertyChange[] changes) => PropertyTrial.Run(Store(Text), CheckSettings.Usual, _ => true, _ => changes, TestContext.Current.CancellationToken);

    private static MemorySourceStore Store(string text) => new([KeyValuePair.Create("x.proc", text)]);

    /// <summary>An action by its first words up to the star, else the declaration of a name.</summary>
    private static PropertyChange Change(string owner, string keyword, string value, bool ofRefit = false)
    {
        var nodes = SyntaxTree.Parse(new SourceText("x.proc", Text)).Root.DescendantsAndSelf().ToList();
        var start = owner.Split('*')[0];
        var span = nodes.FirstOrDefault(node => node is ActionSyntax or CheckRuleSyntax && Text[node.Span.Start..].StartsWith(start, StringComparison.Ordinal))?.Span
            ?? nodes.Select(node => node switch
            {
                JointSyntax joint when joint.Name.Name.Text == owner => joint.Name.Span,
                CoverSyntax cover when cover.Name.Name.Text == owner => cover.Name.Span,
                PartSyntax part when part.Name.Name.Text == owner => part.Name.Span,
                DeclarationSyntax declared when declared.Name.Text == owner => declared.Name.Span,
                _ => (TextSpan?)null,
            }).First(found => found is not null)!.Value;
        return new PropertyChange(new SourceSpan("x.proc", span), ofRefit, keyword, value);
    }
}
