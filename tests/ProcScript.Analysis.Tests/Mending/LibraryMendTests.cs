using System.Collections.Frozen;
using ProcScript.Analysis.Mending;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;
using static ProcScript.Analysis.Tests.Mending.MadeUpFixes;

namespace ProcScript.Analysis.Tests.Mending;

public sealed class LibraryMendTests
{
    private const string Text =
        """
        clip pin "pin"
        machine press "Press" {
          part guard "guard" {
            held by 2 pin as guard_pins
            notice "Wipe the seat, or dirt gets in."
            danger "Mains voltage kills. Only a qualified person goes on."
          }
        }
        procedure guard_off "Take the guard off" on press {
          stage "Guard" {
            release guard_pins
            remove guard
          }
        }

        """;

    private static readonly MendRequest All = new() { NeedsLook = true };

    [Fact]
    public void A_safe_fix_is_applied_and_the_pack_stays()
    {
        var report = Run(Text, new MendRequest());

        var mended = Assert.Single(report.Mended);
        Assert.Equal("PRC5094", mended.Finding.Rule.Code);
        Assert.Empty(report.Left);
        var file = Assert.Single(report.Files);
        Assert.True(file.After.IndexOf("danger", StringComparison.Ordinal) < file.After.IndexOf("notice", StringComparison.Ordinal));
        Assert.Equal(Pack(Text), Pack(file.After));
    }

    [Fact]
    public void What_needs_a_look_waits_until_it_is_asked_for()
    {
        var text = Text.Replace("    release guard_pins\n", "", StringComparison.Ordinal);

        var careful = Run(text, new MendRequest { Rules = Codes("PRC3001") });
        Assert.Empty(careful.Files);
        Assert.Contains(careful.Left, left => left is { Because: LeftBecause.NeedsLook, Reported.Finding.Rule.Code: "PRC3001" });
        Assert.Contains(careful.Left, left => left is { Because: LeftBecause.OtherRule, Reported.Finding.Rule.Code: "PRC5094" });

        var bold = Run(text, All with { Rules = Codes("PRC3001") });
        Assert.Contains("    release guard_pins\n    remove guard\n", Assert.Single(bold.Files).After, StringComparison.Ordinal);
        Assert.True(bold.After.Procedures.Single().IsProven);
    }

    [Fact]
    public void Rules_that_undo_each_other_are_named_and_nothing_comes_of_it()
    {
        var report = Mend(
            Text + "// ab\n", All with { Rules = Codes("PRC9001", "PRC9002") }, new WordRule("PRC9001", "ab", "ba", FixGrade.NeedsLook), new WordRule("PRC9002", "ba", "ab", FixGrade.NeedsLook));

        Assert.Equal(["PRC9001", "PRC9002"], report.Fighting.Select(rule => rule.Code));
        Assert.Empty(report.Files);
        Assert.Empty(report.Mended);
        Assert.Equal(Text + "// ab\n", report.After.Library.Trees["x.proc"].Text.Content);
    }

    [Fact]
    public void A_fight_in_one_file_does_not_stop_the_others()
    {
        const string other = "machine m { part a { notice \"N.\"  danger \"D.\" } }\nprocedure p on m { stage \"S\" { remove a } }\n";
        var report = Mend(
            [("x.proc", Text + "// ab\n"), ("y.proc", other)], All, new WordRule("PRC9001", "ab", "ba", FixGrade.NeedsLook), new WordRule("PRC9002", "ba", "ab", FixGrade.NeedsLook));

        var fight = Assert.Single(report.Fights);
        Assert.Equal(("x.proc", "PRC9001 PRC9002"), (fight.Path, string.Join(' ', fight.Rules.Select(rule => rule.Code))));
        Assert.Equal(["x.proc", "y.proc"], report.Files.Select(file => file.Path));
        Assert.All(report.Files, file => Assert.True(file.After.IndexOf("danger", StringComparison.Ordinal) < file.After.IndexOf("notice", StringComparison.Ordinal)));
        Assert.Contains("// ab\n", report.Files[0].After, StringComparison.Ordinal);
    }

    [Fact]
    public void A_fix_that_takes_out_a_comment_is_not_applied_and_is_named()
    {
        var report = Mend("// one\n// two\n" + Text, All with { Rules = Codes("PRC9001") }, new WordRule("PRC9001", "\n// two\nclip", "\nclip", FixGrade.NeedsLook));

        Assert.Contains(report.Refused, refused => refused.Because == "it would take out a comment, line 2: // two");
        Assert.Empty(report.Files);
    }

    [Fact]
    public void A_rule_that_never_comes_to_an_end_is_named_and_nothing_comes_of_it()
    {
        // One of the two findings goes and another comes, for ever longer.
        var report = Mend(
            "// ab\n" + Text,
            All with { Rules = Codes("PRC9001", "PRC9002", "PRC9003") },
            new WordRule("PRC9001", " ab", " ba", FixGrade.NeedsLook),
            new WordRule("PRC9002", " ba", " xab", FixGrade.NeedsLook),
            new WordRule("PRC9003", "xab", "x ab", FixGrade.NeedsLook));

        Assert.Equal(3, report.Fighting.Count());
        Assert.Empty(report.Files);
    }

    [Fact]
    public void A_fix_that_brings_an_error_is_not_applied_and_is_named()
    {
        var report = Mend(Text, All, new WordRule("PRC9001", "remove guard", "remove nothing_there", FixGrade.NeedsLook));

        var refused = Assert.Single(report.Refused);
        Assert.Equal("PRC9001", refused.Finding.Rule.Code);
        Assert.Equal(12, refused.Line);
        Assert.StartsWith("it would bring an error, PRC1101: ", refused.Because, StringComparison.Ordinal);
        Assert.Contains("remove guard\n", Assert.Single(report.Files).After, StringComparison.Ordinal);
        Assert.Contains(report.Left, left => left is { Because: LeftBecause.Refused, Reported.Finding.Rule.Code: "PRC9001" });
    }

    [Fact]
    public void What_calls_itself_safe_and_changes_the_pack_is_not_applied()
    {
        WordRule rule = new("PRC9001", "\"guard\"", "\"cover\"");

        var refused = Assert.Single(Mend(Text, All, rule).Refused);

        Assert.Equal("it would change what the work pack of guard_off says", refused.Because);
        Assert.Empty(Mend(Text, All, rule with { Grade = FixGrade.NeedsLook }).Refused);
    }

    [Fact]
    public void What_calls_itself_safe_and_brings_another_finding_is_not_applied()
    {
        WordRule[] rules = [new("PRC9001", "// ab", "// ba"), new("PRC9002", "// ba", "// b a", FixGrade.NeedsLook)];

        Assert.Equal("it would bring a finding, PRC9002: there is a // ba", Assert.Single(Mend("// ab\n" + Text, new MendRequest(), rules).Refused).Because);
        Assert.StartsWith("// b a\n", Mend("// ab\n" + Text, All, rules[0] with { Grade = FixGrade.NeedsLook }, rules[1]).Files.Single().After, StringComparison.Ordinal);
    }

    /// <summary>What was hidden by the slip is seen by who mends it, and not left to a program that thinks all is well.</summary>
    [Fact]
    public void A_safe_fix_that_uncovers_an_error_is_not_applied_and_one_that_uncovers_a_hint_is()
    {
        var slip = Text.Replace("remove guard\n", "remove gurd\n", StringComparison.Ordinal);
        var worse = slip.Replace("    release guard_pins\n", "", StringComparison.Ordinal);
        var vague = slip.Replace("    remove gurd\n", "    remove gurd\n    task \"Wipe it as required.\"\n", StringComparison.Ordinal);
        MendRequest names = new() { Rules = Codes("PRC1101") };

        Assert.StartsWith("it would bring an error, PRC3001: ", Assert.Single(Run(worse, names).Refused).Because, StringComparison.Ordinal);
        Assert.Equal("PRC1101", Assert.Single(Run(slip, names).Mended).Finding.Rule.Code);
        Assert.Equal("PRC1101", Assert.Single(Run(vague, names).Mended).Finding.Rule.Code);
    }

    [Fact]
    public void A_value_that_is_misspelt_in_the_list_of_a_loop_is_put_right_there()
    {
        const string Loop =
            """
            clip hook "hook"
            machine van "Van" {
              each side in left, right { part step[side] "{side} step" { held by 2 hook as step_hooks[side] } }
            }
            procedure steps_off "Take the steps off" on van {
              stage "Steps" {
                each side in left, right {
                  release step_hooks[side]
                  remove step[side]
                }
              }
            }

            """;
        foreach (var (right, wrong) in new[] { ("    each side in left, right", "    each side in left, rigt"), ("remove step[side]", "remove stp[side]") })
        {
            var report = Run(Loop.Replace(right, wrong, StringComparison.Ordinal), new MendRequest());

            Assert.Equal(Loop, Assert.Single(report.Files).After);
            Assert.Empty(report.Refused);
        }
    }

    [Fact]
    public void A_fix_that_leaves_its_finding_is_not_applied()
    {
        var report = Mend("// ab\n" + Text, All, new WordRule("PRC9001", "ab", "xab"));

        Assert.Equal("it would leave the finding", Assert.Single(report.Refused).Because);
    }

    [Fact]
    public void One_bad_fix_keeps_none_of_the_others_from_being_applied()
    {
        var comments = string.Concat(Enumerable.Range(0, 20).Select(i => $"// good {i}\n"));

        var report = Mend(comments + Text, All, new WordRule("PRC9001", "good", "fine"), new WordRule("PRC9002", "remove guard", "remove x"));

        Assert.Equal("PRC9002", Assert.Single(report.Refused).Finding.Rule.Code);
        Assert.Equal(21, report.Mended.Length);
        Assert.DoesNotContain("good", Assert.Single(report.Files).After, StringComparison.Ordinal);
    }

    [Fact]
    public void Edits_of_one_place_are_made_one_after_the_other()
    {
        var report = Mend("// abc\n" + Text, All, new WordRule("PRC9001", "abc", "c"), new WordRule("PRC9002", "bc", "b"));

        Assert.StartsWith("// c\n", report.Files.Single().After, StringComparison.Ordinal);
        Assert.Empty(report.Fighting);
    }

    [Fact]
    public void A_file_that_was_laid_out_stays_so_and_another_stays_as_its_author_has_it()
    {
        WordRule rule = new("PRC9001", "as guard_pins", "  as   guard_pins");
        WordRule settled = rule with { Finds = "// x\n", Writes = "//   y\n" };
        var laidOut = Text.Replace("\nprocedure", "\n\n\n\n// x\nprocedure", StringComparison.Ordinal);

        var untidy = Mend(laidOut, All with { Rules = Codes("PRC9001") }, settled);
        var tidy = Mend(laidOut.Replace("\n\n\n\n", "\n\n", StringComparison.Ordinal), All with { Rules = Codes("PRC9001") }, settled with { Writes = "\n\n\n// y\n" });

        Assert.Contains("\n\n\n\n//   y\n", untidy.Files.Single().After, StringComparison.Ordinal);
        Assert.Contains("}\n\n// y\nprocedure", tidy.Files.Single().After, StringComparison.Ordinal);
    }

    [Fact]
    public void Files_that_are_not_to_be_changed_are_not()
    {
        var report = Run(Text, new MendRequest { MayChange = _ => false });

        Assert.Empty(report.Files);
        Assert.Empty(report.Left);
    }

    private static MendReport Run(string text, MendRequest request) =>
        LibraryMend.Run(MemorySourceStore.Of("x.proc", text), CheckSettings.Usual, request, TestContext.Current.CancellationToken);

    private static FrozenSet<string> Codes(params string[] codes) => codes.ToFrozenSet(StringComparer.Ordinal);

    private static string Pack(string text) => MendState.PackOf(LibraryCheck.Run(MemorySourceStore.Of("x.proc", text)).Procedures.Single());
}
