using ProcScript.Analysis.Refactoring;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Formatting;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Tests.Refactoring;

/// <summary>Every refactoring: the result parses, is laid out as <c>format</c> does, and has no new error.</summary>
public sealed class RefactoringTests
{
    private const string Path = "x.proc";

    private const string Head =
        """
        tool key "key"
        fastener bolt "bolt" { drive key }
        clip pin "pin"

        machine fan "Fan" {
          option lamp "work lamp"
          energy mains "mains" { isolate "Pull the plug."  verify "It stays dark."  restore "Push the plug in." }
          part guard "front guard" { mass 1 kg  held by 4 bolt as guard_bolts }
          part wheel "wheel" {
            mass 1 kg
            behind guard
            held by 1 bolt as hub_bolt { needs mains isolated }
          }
          each side in left, right {
            part foot[side] "{side} foot" { mass 1 kg  held by 2 pin as foot_pins[side] }
          }
        }


        """;

    private static readonly string Wheel = Head +
        """
        // Takes the wheel off.
        procedure wheel_off "Take the wheel off" on fan {
          goal remove wheel
          stage "Guard" {
            // All four.
            undo guard_bolts
            remove guard
            isolate mains
          }
          stage "Feet" {
            release foot_pins[left]
            remove foot[left]
          }
          stage "Wheel" {
            warning "The wheel is sharp."
            undo hub_bolt
            remove wheel
          }
          work { clean wheel }
        }

        """;

    /// <summary>From where to where is selected, what is asked for, and what then stands in the text.</summary>
    public static TheoryData<string, string, string, string> Changes => new()
    {
        {
            "undo guard_bolts", "remove guard", "Make a stage of the steps: \"Front guard\"",
            """
              stage "Front guard" {
                // All four.
                undo guard_bolts
                remove guard
              }
              stage "Guard" {
                isolate mains
              }
              stage "Feet" {
            """
        },
        {
            "isolate mains", "isolate mains", "Make a stage of the steps: \"Make safe\"",
            """
                remove guard
              }
              stage "Make safe" {
                isolate mains
              }
            """
        },
        {
            "remove guard", "remove guard", "Make a stage of the steps: \"Front guard\"",
            """
                undo guard_bolts
              }
              stage "Front guard" {
                remove guard
              }
              stage "Guard, the rest" {
                isolate mains
              }
            """
        },
        {
            "undo guard_bolts", "remove guard", "Make a procedure of the steps: `guard_off`",
            """
            procedure guard_off "Take the front guard off" on fan {
              goal remove guard
              stage "Front guard" {
                // All four.
                undo guard_bolts
                remove guard
              }
            }

            // Takes the wheel off.
            procedure wheel_off "Take the wheel off" on fan {
              goal remove wheel
              stage "Guard" {
                do guard_off
                isolate mains
              }
            """
        },
        {
            "undo guard_bolts", "isolate mains", "Make a procedure of the steps: `guard_off`",
            """
              goal remove wheel
              do guard_off
              stage "Feet" {
            """
        },
        {
            "clean wheel", "clean wheel", "Wrap the steps in `when lamp`",
            """
              work {
                when lamp {
                  clean wheel
                }
              }
            """
        },
        {
            "release foot_pins[left]", "remove foot[left]", "Write the same for `right`",
            """
              stage "Feet" {
                release foot_pins[left]
                remove foot[left]
                release foot_pins[right]
                remove foot[right]
              }
            """
        },
        {
            "release foot_pins[left]", "remove foot[left]", "Wrap the steps in `each side in left, right`",
            """
              stage "Feet" {
                each side in left, right {
                  release foot_pins[side]
                  remove foot[side]
                }
              }
            """
        },
        {
            "stage \"Feet\"", "stage \"Feet\"", "Move the stage \"Feet\" up",
            """
              goal remove wheel
              stage "Feet" {
                release foot_pins[left]
                remove foot[left]
              }
              stage "Guard" {
                // All four.
            """
        },
        {
            "stage \"Feet\"", "stage \"Feet\"", "Move the stage \"Feet\" down",
            """
              stage "Wheel" {
                warning "The wheel is sharp."
                undo hub_bolt
                remove wheel
              }
              stage "Feet" {
            """
        },
    };

    [Theory]
    [MemberData(nameof(Changes))]
    public void A_change_leaves_a_sound_text(string from, string to, string title, string expected)
    {
        var before = Checked.Text(Wheel).Report;
        var change = Assert.Single(At(before, Wheel, from, to), one => one.Title == title);
        var after = AssertSound(Wheel, before, change);

        Assert.Contains(expected.ReplaceLineEndings("\n"), after, StringComparison.Ordinal);
    }

    [Fact]
    public void Steps_that_are_written_for_each_side_become_a_loop()
    {
        var text = Wheel.Replace("    remove foot[left]\n", "    remove foot[left]\n    release foot_pins[right]\n    remove foot[right]\n", StringComparison.Ordinal);
        var before = Checked.Text(text).Report;

        var change = Assert.Single(At(before, text, "release foot_pins[left]", "remove foot[right]"), one => one.Title == "Write the steps once, in `each side in left, right`");

        Assert.Contains("    each side in left, right {\n      release foot_pins[side]\n      remove foot[side]\n    }\n", AssertSound(text, before, change), StringComparison.Ordinal);
    }

    [Fact]
    public void Steps_that_differ_in_more_than_the_side_become_no_loop()
    {
        var text = Wheel.Replace("    remove foot[left]\n", "    remove foot[left]\n    release foot_pins[right] { how \"Both at once.\" }\n    remove foot[right]\n", StringComparison.Ordinal);

        Assert.DoesNotContain(At(Checked.Text(text).Report, text, "release foot_pins[left]", "remove foot[right]"), one => one.Title.StartsWith("Write the steps once", StringComparison.Ordinal));
    }

    [Fact]
    public void A_stage_that_others_lean_on_does_not_move_past_them()
    {
        var text = Wheel.Replace("  stage \"Feet\" {\n    release foot_pins[left]\n    remove foot[left]\n  }\n", "", StringComparison.Ordinal);
        var before = Checked.Text(text).Report;

        Assert.True(before.Procedures.All(one => one.IsProven));
        Assert.Empty(At(before, text, "stage \"Guard\"", "stage \"Guard\""));
    }

    [Fact]
    public void Steps_that_lean_on_others_become_no_procedure()
    {
        Assert.DoesNotContain(At(Checked.Text(Wheel).Report, Wheel, "undo hub_bolt", "remove wheel"), one => one.Title.StartsWith("Make a procedure", StringComparison.Ordinal));
    }

    [Fact]
    public void A_parameter_goes_along_with_the_steps()
    {
        var text = Head +
            """
            procedure foot_renewed(side in left, right) "Renew the {side} foot" on fan {
              goal clean foot[side]
              stage "Foot" {
                release foot_pins[side]
                remove foot[side]
              }
              work { clean foot[side] }
            }

            """;
        var before = Checked.Text(text).Report;
        var change = Assert.Single(At(before, text, "release foot_pins[side]", "remove foot[side]"), one => one.Title == "Make a procedure of the steps: `foot_off`");
        var after = AssertSound(text, before, change);

        Assert.Contains("procedure foot_off(side in left, right) \"Take the {side} foot off\" on fan {\n  goal remove foot[side]\n", after, StringComparison.Ordinal);
        Assert.Contains("  do foot_off(side)\n", after, StringComparison.Ordinal);
    }

    [Fact]
    public void A_text_with_an_error_and_a_mere_place_have_none()
    {
        var broken = Wheel + "part\n";

        Assert.Empty(At(Checked.Text(broken).Report, broken, "undo guard_bolts", "remove guard"));
        Assert.Empty(Refactorings.For(Checked.Text(Wheel).Report, Path, new TextSpan(Wheel.IndexOf("undo guard_bolts", StringComparison.Ordinal), 0), TestContext.Current.CancellationToken));
    }

    [Fact]
    public void In_a_file_of_another_layout_only_what_changes_is_laid_out()
    {
        var text = Wheel.Replace("  work { clean wheel }", "     work {   clean wheel }", StringComparison.Ordinal);
        var before = Checked.Text(text).Report;

        var change = Assert.Single(At(before, text, "isolate mains", "isolate mains"), one => one.Sort == RefactoringSort.Extract);
        var after = TextEdits.Apply(text, change.Edits);

        Assert.Contains("    remove guard\n  }\n  stage \"Make safe\" {\n    isolate mains\n  }\n  stage \"Feet\" {\n", after, StringComparison.Ordinal);
        Assert.Contains("     work {   clean wheel }", after, StringComparison.Ordinal);
    }

    [Fact]
    public void All_findings_of_a_rule_are_fixed_at_once()
    {
        var text = Head.Replace("mass 1 kg", "mass 1 Kg", StringComparison.Ordinal);
        var before = Checked.Text(text).Report;
        var rule = before.Findings[0].Finding.Rule;

        var fix = RuleFixes.AllOf(before, Path, rule);

        Assert.Equal("PRC1201", rule.Code);
        Assert.NotNull(fix);
        Assert.Equal("Fix all 3 findings of `unknown-unit` in this file", fix.Title);
        Assert.Equal(Head, TextEdits.Apply(text, fix.Edits));
        Assert.Null(RuleFixes.AllOf(Checked.Text(Head).Report, Path, rule));
        Assert.Equal(Head, TextEdits.Apply(text, RuleFixes.Safe(before, Path, TestContext.Current.CancellationToken)));
    }

    /// <summary>Every stretch of steps is selected in turn.</summary>
    [Fact]
    public void Whatever_is_offered_in_a_file_is_sound()
    {
        var before = Checked.Text(Wheel).Report;
        var steps = before.Library.Trees[Path].Root.DescendantsAndSelf().OfType<Syntax.Nodes.ActionSyntax>().ToList();
        var offered = 0;
        foreach (var first in steps)
        {
            foreach (var last in steps.Where(step => step.Span.Start >= first.Span.Start))
            {
                foreach (var change in Refactorings.For(before, Path, TextSpan.FromBounds(first.Span.Start, last.Span.End), TestContext.Current.CancellationToken))
                {
                    // A branch leaves steps out on purpose.
                    offered++;
                    AssertSound(Wheel, before, change, mayBreak: change.Title.StartsWith("Wrap the steps in `when", StringComparison.Ordinal));
                }
            }
        }

        Assert.InRange(offered, 20, int.MaxValue);
    }

    private static List<Analysis.Refactoring.Refactoring> At(LibraryReport report, string text, string from, string to)
    {
        var start = text.IndexOf(from, StringComparison.Ordinal);
        var end = text.IndexOf(to, start, StringComparison.Ordinal) + to.Length;
        return [.. Refactorings.For(report, Path, TextSpan.FromBounds(start, end), TestContext.Current.CancellationToken)];
    }

    private static string AssertSound(string text, LibraryReport before, Analysis.Refactoring.Refactoring change, bool mayBreak = false)
    {
        var after = TextEdits.Apply(text, change.Edits);
        var report = Checked.Text(after).Report;

        Assert.Equal(text, Formatter.Format(before.Library.Trees[Path]));
        Assert.Empty(report.Library.Trees[Path].Findings);
        Assert.Equal(after, Formatter.Format(report.Library.Trees[Path]));
        if (!mayBreak)
        {
            Assert.Empty(report.Findings.Where(reported => reported.Severity == Severity.Error).Select(reported => $"{change.Title}: {reported.Finding.Message}"));
            Assert.All(report.Procedures, one => Assert.True(one.IsProven, change.Title));
        }

        return after;
    }
}
