using ProcScript.Analysis.Completion;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Tests.Completion;

public sealed class MissingStepsTests
{
    private const string Fan =
        """
        tool key "key"
        fastener bolt "bolt" { drive key }
        clip cap "cap"
        connector plug_2 "plug"
        line hose "hose" { tool key }
        machine fan "Fan" {
          energy mains "mains" { isolate "Off."  verify "Dark."  restore "On." }
          fluid oil "oil" { charge 2 ± 0.1 L  empty "Drain."  fill "Fill." }
          control lever "lever" { up, down }
          part guard "guard" { held by 4 bolt as guard_bolts { covered by 4 cap as guard_caps } }
          part wheel "wheel" { behind guard  held by 1 bolt as hub_bolt { needs lever at down } }
          part motor "motor" {
            behind wheel
            held by 4 bolt as motor_bolts
            wired by 1 plug_2 as motor_plug on mains
            piped by 2 hose as motor_hoses { carries oil }
          }
          each side in left, right {
            part foot[side] "{side} foot" {
              behind guard
              held by 1 bolt as foot_bolt[side] { covered by 1 cap as foot_cap[side] }
            }
          }
        }

        """;

    private const string Table =
        """
        tool key "key"
        fastener bolt "bolt" { drive key }
        machine table "Table" {
          option rail "guard rail"
          option lock "lock"
          when rail { part rail_bar "rail" { held by 4 bolt as rail_bolts } }
          part top "top" {
            when rail { behind rail_bar }
            held by 2 bolt as top_bolts
          }
          part drawer "drawer" {
            when lock {
              when not rail { held by 1 bolt as lock_bolt }
            }
          }
        }

        """;

    [Theory]
    [InlineData(
        "  stage \"Motor\" {\n    remove motor\n  }\n",
        """
          stage "Motor" {
            release guard_caps
            undo guard_bolts
            remove guard
            set lever to down
            undo hub_bolt
            remove wheel
            undo motor_bolts
            isolate mains
            unplug motor_plug
            empty oil
            disconnect motor_hoses
            remove motor
          }

        """)]
    [InlineData(
        "  stage \"Guard\" { remove guard }\n",
        "  stage \"Guard\" { release guard_caps  undo guard_bolts  remove guard }\n")]
    [InlineData(
        "  stage \"Guard\" {\n    release guard_caps\n    undo 3 of guard_bolts\n    remove guard // carefully\n  }\n",
        "  stage \"Guard\" {\n    release guard_caps\n    undo 3 of guard_bolts\n    undo rest of guard_bolts\n    remove guard // carefully\n  }\n")]
    [InlineData(
        "  stage \"Guard\" {\n    release guard_caps\n    notice \"It tips.\"\n    remove guard { people 2 }\n  }\n",
        "  stage \"Guard\" {\n    release guard_caps\n    undo guard_bolts\n    notice \"It tips.\"\n    remove guard { people 2 }\n  }\n")]
    [InlineData(
        "  stage \"Guard\" {\n    remove guard\n    release guard_caps { how \"Use a lever.\" }\n    undo guard_bolts\n  }\n",
        "  stage \"Guard\" {\n    release guard_caps { how \"Use a lever.\" }\n    undo guard_bolts\n    remove guard\n  }\n")]
    [InlineData(
        "  stage \"Guard\" {\n    release guard_caps\n    undo guard_bolts\n  }\n  work { clean wheel }\n",
        "  stage \"Guard\" {\n    release guard_caps\n    undo guard_bolts\n    remove guard\n  }\n  work { clean wheel }\n")]
    [InlineData(
        "  stage \"Guard\" { release guard_caps }\n  work { replace guard }\n",
        "  stage \"Guard\" { release guard_caps  undo guard_bolts  remove guard }\n  work { replace guard }\n")]
    public void What_steps_lack_is_put_before_them_and_proven(string stages, string expected)
    {
        var (text, fix) = Complete(stages);

        Assert.Equal(FixGrade.Safe, fix!.Grade);
        Assert.Equal(Job(expected), text);
        Assert.True(Checked.Text(text).Only.IsProven);
    }

    [Fact]
    public void In_a_loop_a_line_says_what_each_pass_lacks()
    {
        var (text, fix) = Complete(
            """
              stage "Feet" {
                release guard_caps
                undo guard_bolts
                remove guard
                each side in left, right {
                  remove foot[side]
                }
              }

            """);

        Assert.Equal(FixGrade.Safe, fix!.Grade);
        Assert.Contains("  each side in left, right {\n      release foot_cap[side]\n      undo foot_bolt[side]\n      remove foot[side]\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_only_the_first_pass_of_a_loop_lacks_goes_before_the_loop()
    {
        var (text, fix) = Complete(
            """
              stage "Feet" {
                each side in left, right {
                  release foot_cap[side]
                  undo foot_bolt[side]
                  remove foot[side]
                }
              }

            """);

        Assert.Equal(FixGrade.Safe, fix!.Grade);
        Assert.Contains("{\n    release guard_caps\n    undo guard_bolts\n    remove guard\n    each side in left, right {\n      release foot_cap[side]\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Only_the_steps_at_the_place_get_what_they_lack()
    {
        var source = Job("  stage \"A\" {\n    remove guard\n  }\n  stage \"B\" {\n    remove wheel\n  }\n");
        var check = Checked.Text(source);

        var guard = MissingSteps.For(check.Report, Place(source, "remove", 0), TestContext.Current.CancellationToken);
        var wheel = MissingSteps.For(check.Report, Place(source, "stage \"B\" {\n    remove wheel\n  }", 0), TestContext.Current.CancellationToken);

        Assert.Equal("Add the missing steps `release guard_caps`, `undo guard_bolts`", guard!.Title);
        Assert.Equal("Add the missing steps `set lever to down`, `undo hub_bolt`", wheel!.Title);
        Assert.Equal([FixGrade.NeedsLook, FixGrade.NeedsLook], [guard.Grade, wheel.Grade]);
    }

    [Fact]
    public void Many_lines_are_counted_in_the_title()
    {
        Assert.Equal(
            "Add the missing steps `release guard_caps`, `undo guard_bolts`, `remove guard`, `set lever to down` and 7 more",
            Complete("  stage \"Motor\" {\n    remove motor\n  }\n").Fix!.Title);
    }

    [Theory]
    [InlineData("  stage \"Guard\" { release guard_caps  undo guard_bolts  remove guard }\n")]
    [InlineData("  stage \"Guard\" { undo guard_caps }\n")]
    [InlineData("  stage \"Guard\" { release guard_caps  release guard_caps }\n")]
    [InlineData("  stage \"Guard\" { remove nothing }\n")]
    public void Where_nothing_is_lacking_or_a_line_more_would_not_help_nothing_is_offered(string stages) => Assert.Null(Complete(stages).Fix);

    [Fact]
    public void A_caller_that_would_break_keeps_the_edit_back()
    {
        var source = Job("  stage \"Wheel\" {\n    set lever to down\n    undo hub_bolt\n    remove wheel\n  }\n")
            + "procedure outer \"Outer\" on fan {\n  stage \"Guard\" { release guard_caps  undo guard_bolts  remove guard }\n  do p\n}\n";
        var check = Checked.Text(source);

        Assert.True(check.Procedure("outer").IsProven);
        Assert.Null(MissingSteps.For(check.Report, Place(source, "undo hub_bolt", 0), TestContext.Current.CancellationToken));
    }

    [Fact]
    public void What_a_called_procedure_lacks_goes_before_the_call()
    {
        var source = Fan
            + "procedure wheel_off \"Wheel\" on fan {\n  stage \"Wheel\" { set lever to down  undo hub_bolt  remove wheel }\n}\n"
            + "procedure p \"P\" on fan {\n  stage \"A\" {\n    do wheel_off\n  }\n}\n";
        var check = Checked.Text(source);

        var fix = MissingSteps.For(check.Report, Place(source, "do wheel_off", 0), TestContext.Current.CancellationToken);

        // The called procedure has the same fault for itself, and keeps it.
        Assert.Equal(FixGrade.Safe, fix!.Grade);
        Assert.Equal("release guard_caps\n    undo guard_bolts\n    remove guard\n    ", Assert.Single(fix.Edits).NewText);
    }

    [Fact]
    public void A_line_that_grows_too_long_is_laid_out()
    {
        var (text, _) = Complete("  stage \"Motor\" { remove motor }\n");

        Assert.All(text.Split('\n'), line => Assert.True(line.Length <= 120, line));
        Assert.True(Checked.Text(text).Only.IsProven);
    }

    [Theory]
    [InlineData(
        "  stage \"Top\" {\n    undo top_bolts\n    remove top\n  }\n",
        "  stage \"Top\" {\n    when rail {\n      undo rail_bolts\n      remove rail_bar\n    }\n    undo top_bolts\n    remove top\n  }\n",
        "Add the missing steps `undo rail_bolts` (when rail), `remove rail_bar` (when rail)")]
    [InlineData(
        "  stage \"Top\" {\n    remove top\n  }\n",
        "  stage \"Top\" {\n    when rail {\n      undo rail_bolts\n      remove rail_bar\n    }\n    undo top_bolts\n    remove top\n  }\n",
        "Add the missing steps `undo rail_bolts` (when rail), `remove rail_bar` (when rail), `undo top_bolts`")]
    [InlineData(
        "  stage \"Top\" { undo top_bolts  remove top }\n",
        "  stage \"Top\" { when rail { undo rail_bolts  remove rail_bar }  undo top_bolts  remove top }\n",
        "Add the missing steps `undo rail_bolts` (when rail), `remove rail_bar` (when rail)")]
    [InlineData(
        "  when rail {\n    stage \"Rail\" {\n      remove rail_bar\n    }\n  }\n  stage \"Top\" { undo top_bolts  remove top }\n",
        "  when rail {\n    stage \"Rail\" {\n      undo rail_bolts\n      remove rail_bar\n    }\n  }\n  stage \"Top\" { undo top_bolts  remove top }\n",
        "Add the missing step `undo rail_bolts`")]
    [InlineData(
        "  stage \"Drawer\" {\n    remove drawer\n  }\n",
        "  stage \"Drawer\" {\n    when not rail { when lock { undo lock_bolt } }\n    remove drawer\n  }\n",
        "Add the missing step `undo lock_bolt` (when not rail, when lock)")]
    [InlineData(
        "  stage \"Top\" { undo top_bolts }\n  work {\n    when rail { clean rail_bar }\n    replace top\n  }\n",
        "  stage \"Top\" { when rail { undo rail_bolts  remove rail_bar }  undo top_bolts  remove top }\n  work {\n    when rail { clean rail_bar }\n    replace top\n  }\n",
        "Add the missing steps `undo rail_bolts` (when rail), `remove rail_bar` (when rail), `remove top`")]
    public void What_only_some_variants_lack_goes_under_a_when(string stages, string expected, string title)
    {
        var (text, fix) = Complete(Table, stages);

        Assert.Equal(Job(Table, expected), text);
        Assert.Equal(title, fix!.Title);
        Assert.Equal(FixGrade.Safe, fix.Grade);
        Assert.All(Checked.Text(text).Report.Procedures, procedure => Assert.True(procedure.IsProven));
    }

    [Fact]
    public void What_only_some_arguments_lack_goes_under_a_when()
    {
        const string Head = "procedure foot_out(side in left, right) \"Foot\" on fan {\n  stage \"Foot\" {\n";
        const string Tail = "    release foot_cap[side]\n    undo foot_bolt[side]\n    remove foot[side]\n  }\n}\n";
        const string Guard = "release guard_caps\n      undo guard_bolts\n      remove guard\n    }\n";
        var check = Checked.Text($"{Fan}{Head}    when side is left {{\n      {Guard}{Tail}");

        var fix = MissingSteps.For(check.Report, Whole(check, "foot_out"), TestContext.Current.CancellationToken)!;

        Assert.Equal(FixGrade.Safe, fix.Grade);
        Assert.Equal($"when side is right {{\n      {Guard}    ", Assert.Single(fix.Edits).NewText);
    }

    [Theory]
    [InlineData(
        "  do wheel_off\n",
        "  stage \"Before: Take the wheel off\" {\n    release guard_caps\n    undo guard_bolts\n    remove guard\n  }\n  do wheel_off\n")]
    [InlineData(
        "  stage \"Caps\" { release guard_caps }\n  do wheel_off\n  stage \"Motor\" { undo motor_bolts  isolate mains  unplug motor_plug  empty oil  disconnect motor_hoses  remove motor }\n",
        "  stage \"Caps\" { release guard_caps }\n  stage \"Before: Take the wheel off\" {\n    undo guard_bolts\n    remove guard\n  }\n  do wheel_off\n"
        + "  stage \"Motor\" { undo motor_bolts  isolate mains  unplug motor_plug  empty oil  disconnect motor_hoses  remove motor }\n")]
    [InlineData(
        "  stage \"Guard\" { release guard_caps  undo guard_bolts  remove guard }\n  do wheel_off\n  work { replace motor }\n",
        "  stage \"Guard\" { release guard_caps  undo guard_bolts  remove guard }\n  do wheel_off\n  stage \"Before the work\" {\n"
        + "    undo motor_bolts\n    isolate mains\n    unplug motor_plug\n    empty oil\n    disconnect motor_hoses\n    remove motor\n  }\n  work { replace motor }\n")]
    [InlineData(
        "  work { replace guard }\n",
        "  stage \"Before the work\" {\n    release guard_caps\n    undo guard_bolts\n    remove guard\n  }\n  work { replace guard }\n")]
    public void Between_stages_missing_steps_make_up_one_of_their_own(string items, string expected)
    {
        const string Called = "procedure wheel_off \"Take the wheel off\" on fan {\n  stage \"Wheel\" { set lever to down  undo hub_bolt  remove wheel }\n}\n";

        var (text, fix) = Complete(Fan + Called, items);

        Assert.Equal(Job(Fan + Called, expected), text);
        Assert.Equal(FixGrade.Safe, fix!.Grade);
    }

    [Fact]
    public void A_call_under_a_when_between_stages_gets_its_stage_there()
    {
        const string Called = "procedure top_off \"Take the top off\" on table {\n  stage \"Top\" { undo top_bolts  remove top }\n}\n";

        var (text, fix) = Complete(Table + Called, "  when rail {\n    do top_off\n  }\n");

        Assert.Equal(
            Job(Table + Called, "  when rail {\n    stage \"Before: Take the top off\" {\n      undo rail_bolts\n      remove rail_bar\n    }\n    do top_off\n  }\n"), text);
        Assert.Equal(FixGrade.Safe, fix!.Grade);
    }

    [Fact]
    public void Tests_under_power_and_what_stays_open_are_left_as_they_are()
    {
        const string Rules =
            "  refit {\n    test \"Runs\" before fit guard {\n      power mains\n      check \"It turns.\"\n    }\n"
            + "    restore mains while guard open because \"It is watched.\"\n  }\n";

        var (text, fix) = Complete($"  stage \"Guard\" {{\n    isolate mains\n    remove guard\n  }}\n{Rules}");

        Assert.Equal(
            Job(Fan, $"  stage \"Guard\" {{\n    isolate mains\n    release guard_caps\n    undo guard_bolts\n    remove guard\n  }}\n{Rules}"), text);
        Assert.Equal(FixGrade.Safe, fix!.Grade);
    }

    private static SourceSpan Whole(Checked check, string name)
    {
        var declared = check.Report.Procedures.First(report => report.Procedure.Name == name).Procedure.Declared;
        var end = check.Report.Library.Trees[declared.Path].Text.Content.LastIndexOf('}') + 1;
        return new SourceSpan(declared.Path, TextSpan.FromBounds(declared.Span.Start, end));
    }

    private static (string Text, Fix? Fix) Complete(string stages) => Complete(Fan, stages);

    private static (string Text, Fix? Fix) Complete(string machine, string stages)
    {
        var source = Job(machine, stages);
        var check = Checked.Text(source);
        var start = source.IndexOf("procedure p", StringComparison.Ordinal);
        var fix = MissingSteps.For(check.Report, new SourceSpan("x.proc", TextSpan.FromBounds(start, source.LastIndexOf('}') + 1)), TestContext.Current.CancellationToken);
        foreach (var edit in (fix?.Edits ?? []).OrderByDescending(edit => edit.Place.Span.Start))
        {
            source = source[..edit.Place.Span.Start] + edit.NewText + source[edit.Place.Span.End..];
        }

        return (source, fix);
    }

    private static string Job(string stages) => Job(Fan, stages);

    private static string Job(string machine, string stages) => $"{machine}procedure p \"P\" on {(machine.StartsWith(Fan, StringComparison.Ordinal) ? "fan" : "table")} {{\n{stages}}}\n";

    private static SourceSpan Place(string source, string words, int from) =>
        new("x.proc", new TextSpan(source.IndexOf(words, source.IndexOf("procedure p", StringComparison.Ordinal) + from, StringComparison.Ordinal), words.Length));
}
