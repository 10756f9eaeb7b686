using ProcScript.Cli.Output;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Cli.Tests.Output;

public sealed class FindingPrinterTests
{
    [Fact]
    public void A_finding_over_two_files_shows_both()
    {
        var printed = new Printed(
            ("evaporator.proc", new string('\n', 30) + "    remove headliner\n"),
            ("cab.proc", new string('\n', 51) + "    wired by 1 two_way as dome_plug { to harness on battery behind headliner }\n"));

        AssertPrints(
            """
            error PRC9999 made-up: the headliner is still held when it is removed
              --> evaporator.proc:31:5
               |
            31 |     remove headliner
               |     ^^^^^^ 1 × 2-way connector `dome_plug` is still plugged
               |
              ::: cab.proc:52:14
            52 |     wired by 1 two_way as dome_plug { to harness on battery behind headliner }
               |              ---------------------- declared here
               = help: unplug `dome_plug` first; it is reached with the headliner aside
            """,
            printed.Print(printed.At(
                "evaporator.proc", "remove", "the headliner is still held when it is removed", "1 × 2-way connector `dome_plug` is still plugged") with
            {
                Related = [printed.Related("cab.proc", "1 two_way as dome_plug", "declared here")],
                Help = "unplug `dome_plug` first; it is reached with the headliner aside",
            }));
    }

    [Fact]
    public void Several_places_on_one_line_hang_their_labels()
    {
        var printed = new Printed(("a.proc", "undo 3 of bolts\n"));

        AssertPrints(
            """
            error PRC9999 made-up: too many
             --> a.proc:1:6
              |
            1 | undo 3 of bolts
              | ---- ^    ----- the bolts
              | |    |
              | |    so many
              | the verb
            """,
            printed.Print(printed.At("a.proc", "3", "too many", "so many") with
            {
                Related = [printed.Related("a.proc", "bolts", "the bolts"), printed.Related("a.proc", "undo", "the verb")],
            }));
    }

    [Fact]
    public void The_primary_mark_covers_one_that_holds_it()
    {
        var printed = new Printed(("a.proc", "undo 3 of bolts\n"));

        AssertPrints(
            """
            error PRC9999 made-up: too many
             --> a.proc:1:6
              |
            1 | undo 3 of bolts
              | -----^---------
              | |    |
              | |    so many
              | the action
            """,
            printed.Print(printed.At("a.proc", "3", "too many", "so many") with
            {
                Related = [printed.Related("a.proc", "undo 3 of bolts", "the action")],
            }));
    }

    [Fact]
    public void Lines_between_places_are_shown_when_one_and_left_out_when_more()
    {
        var printed = new Printed(("a.proc", "one\ntwo\nthree\nfour\nfive\nsix\nseven\n"));

        AssertPrints(
            """
            error PRC9999 made-up: m
             --> a.proc:3:1
              |
            1 | one
              | --- first
            2 | two
            3 | three
              | ^^^^^ here
            ...
            7 | seven
              | ----- last
            """,
            printed.Print(printed.At("a.proc", "three", "m", "here") with
            {
                Related = [printed.Related("a.proc", "seven", "last"), printed.Related("a.proc", "one", "first")],
            }));
    }

    [Fact]
    public void Line_numbers_stand_in_one_column()
    {
        var printed = new Printed(("a.proc", "first" + new string('\n', 120) + "last"), ("b.proc", "other"));

        AssertPrints(
            """
            error PRC9999 made-up: m
               --> a.proc:1:1
                |
              1 | first
                | ^^^^^
            ...
            121 | last
                | ---- l
                |
               ::: b.proc:1:1
              1 | other
                | ----- o
                = help: do this
                        and that
            """,
            printed.Print(printed.At("a.proc", "first", "m") with
            {
                Related = [printed.Related("a.proc", "last", "l"), printed.Related("b.proc", "other", "o")],
                Help = "do this\nand that",
            }));
    }

    [Fact]
    public void Tabs_wide_and_combining_characters_keep_the_marks_in_place()
    {
        var printed = new Printed(("a.proc", "\tpart 座席\u200B e\u0301 😀 x\n"));

        AssertPrints(
            "error PRC9999 made-up: m\n" +
            " --> a.proc:1:17\n" +
            "  |\n" +
            "1 |     part 座席\u200B e\u0301 😀 x\n" +
            "  |          ---- - -- ^ here\n" +
            "  |          |    | |\n" +
            "  |          |    | face\n" +
            "  |          |    accent\n" +
            "  |          wide",
            printed.Print(printed.At("a.proc", "x", "m", "here") with
            {
                Related = [printed.Related("a.proc", "座席", "wide"), printed.Related("a.proc", "e\u0301", "accent"), printed.Related("a.proc", "😀", "face")],
            }));
    }

    [Fact]
    public void Characters_that_a_terminal_obeys_are_pictured()
    {
        var printed = new Printed(("a.proc", "a\u001B[31m\0\u202Eb\uD800c\n"));

        AssertPrints(
            """
            error PRC9999 made-up: bad ␛[2J word
             --> a.proc:1:11
              |
            1 | a␛[31m␀�b�c
              |           ^ h␇
            """,
            printed.Print(printed.At("a.proc", "c", "bad \u001B[2J word", "h\a")));
    }

    [Fact]
    public void A_long_line_is_shown_around_the_place()
    {
        var printed = new Printed(("a.proc", new string('a', 5_000_000) + "HERE" + new string('b', 5_000_000)));

        var text = printed.Print(printed.At("a.proc", "HERE", "m", "here"));

        Assert.Equal(
            [
                "error PRC9999 made-up: m",
                " --> a.proc:1:5000001",
                "  |",
                $"1 | …{new string('a', 60)}HERE{new string('b', 136)}…",
                $"  |  {new string(' ', 60)}^^^^ here",
            ],
            text.Split('\n'));
    }

    [Fact]
    public void A_place_over_several_lines_is_marked_on_its_first()
    {
        var printed = new Printed(("a.proc", "part a {\n  mass 1 kg\n}\n"));

        AssertPrints(
            """
            error PRC9999 made-up: m
             --> a.proc:1:1
              |
            1 | part a {
              | ^^^^^^^^ all of it
            """,
            printed.Print(printed.At("a.proc", "part a {\n  mass 1 kg\n}", "m", "all of it")));
    }

    [Theory]
    [InlineData("", 0)]
    [InlineData("x\n", 2)]
    [InlineData("x\r\n", 99)]
    public void A_place_at_the_end_of_the_text_is_marked(string content, int offset)
    {
        var printed = new Printed(("a.proc", content));
        var finding = printed.At("a.proc", "", "m", "end") with { Primary = new SourceSpan("a.proc", new TextSpan(offset, 0)) };

        Assert.EndsWith("  | ^ end", printed.Print(finding), StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_without_a_text_is_named()
    {
        var printed = new Printed(("a.proc", "use \"b.proc\"\n"));
        var finding = printed.At("a.proc", "use", "m") with { Primary = new SourceSpan("b.proc", default), Related = [printed.Related("a.proc", "use", "used here")] };

        AssertPrints(
            """
            error PRC9999 made-up: m
             --> b.proc
              |
             ::: a.proc:1:1
            1 | use "b.proc"
              | --- used here
            """,
            printed.Print(finding));
    }

    [Fact]
    public void Fixes_are_shown_as_the_lines_that_change()
    {
        var printed = new Printed(("a.proc", "one\n  remove hedliner\nthree\n"));
        var word = printed.Span("a.proc", "hedliner");
        var line = new SourceSpan("a.proc", new TextSpan(printed.Span("a.proc", "  remove").Span.Start, 0));

        AssertPrints(
            """
            hint PRC9999 made-up: m
             --> a.proc:2:10
              |
            2 |   remove hedliner
              |          ^^^^^^^^
              = fix: write `headliner` (safe)
            2 -   remove hedliner
            2 +   remove headliner
              = fix: unplug it first (needs a look)
            2 +   unplug plug
            """,
            printed.Print(
                printed.At("a.proc", "hedliner", "m") with
                {
                    Fixes =
                    [
                        new Fix("write `headliner`", FixGrade.Safe, [new TextEdit(word, "headliner")]),
                        new Fix("unplug it first", FixGrade.NeedsLook, [new TextEdit(line, "  unplug plug\n")]),
                    ],
                },
                Severity.Hint));
    }

    [Fact]
    public void A_fix_may_take_lines_away_and_touch_another_file()
    {
        var printed = new Printed(("a.proc", "one\ntwo\nthree\n"), ("b.proc", "uno\n"));
        var two = printed.Span("a.proc", "two\n");

        AssertPrints(
            """
            warning PRC9999 made-up: m
             --> a.proc:2:1
              |
            2 | two
              | ^^^
              = fix: drop it
            2 - two
             ::: b.proc
            1 - uno
            1 + una
            """,
            printed.Print(
                printed.At("a.proc", "two", "m") with
                {
                    Fixes =
                    [
                        new Fix("drop it", FixGrade.DisplayOnly, [new TextEdit(two, ""), new TextEdit(printed.Span("b.proc", "uno"), "una")]),
                    ],
                },
                Severity.Warning));
    }

    [Fact]
    public void Colour_only_adds_escape_sequences()
    {
        var printed = new Printed(("a.proc", "undo bolts\n"));
        var finding = printed.At("a.proc", "bolts", "m", "here") with { Help = "help" };

        var plain = printed.Print(finding);
        var coloured = printed.Print(finding, colour: ColourChoice.Always);

        Assert.Contains("\u001B[", coloured, StringComparison.Ordinal);
        Assert.Equal(plain, System.Text.RegularExpressions.Regex.Replace(coloured, "\u001B\\[[0-9;]*m", ""));
    }

    private static void AssertPrints(string expected, string actual) => Assert.Equal(expected.ReplaceLineEndings("\n"), actual);
}
