using ProcScript.Syntax.Formatting;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Syntax.Tests.Formatting;

/// <summary>What a layout looks like.</summary>
public sealed class LayoutTests
{
    [Theory]
    [InlineData("tool   a   \"A\"{size 8mm}", "tool a \"A\" { size 8 mm }\n")]
    [InlineData("fastener a{thread M8 x1 .25 grade 8.8 torque 22±2 N . m}", null)]
    [InlineData("fastener a{thread M8x1 . 25 length 1  1 / 4 in}", "fastener a { thread M8x1.25  length 1 1/4 in }\n")]
    [InlineData("fastener a{thread M8  LH grade A2 -70}", "fastener a { thread M8 LH  grade A2-70 }\n")]
    [InlineData("fastener a{thread M8x1.25 - LH length 1 in}", "fastener a { thread M8x1.25-LH  length 1 in }\n")]
    [InlineData("fastener a{thread 1   1/8 - 7UNC LH thread #10 - 24UNC-LH}", "fastener a { thread 1 1/8-7 UNC LH  thread #10-24 UNC-LH }\n")]
    [InlineData("fastener a{thread 1/4 -20UNC torque 20 ,  40 N·m+90 °}", "fastener a { thread 1/4-20 UNC  torque 20, 40 N·m + 90° }\n")]
    [InlineData("fastener a { spare 10% torque - 1 .. 2 L / min }", "fastener a { spare 10 %  torque -1 .. 2 L/min }\n")]
    [InlineData("machine m{control c{up ,down needs c at up}}", "machine m { control c { up, down  needs c at up } }\n")]
    [InlineData("procedure p ( s in a , b ) on m{do q ( s ) goal remove x [ s ,2 ]}", "procedure p(s in a, b) on m { do q(s)  goal remove x[s, 2] }\n")]
    [InlineData("machine m { }", "machine m { }\n")]
    [InlineData("machine m {\n\n}", "machine m {\n}\n")]
    [InlineData("use \"a.proc\" use \"b.proc\"", "use \"a.proc\"  use \"b.proc\"\n")]
    [InlineData("\n\n  tool a\n\n\n\ntool b   \n\n", "tool a\n\ntool b\n")]
    [InlineData("tool a\r\ntool b", "tool a\r\ntool b\r\n")]
    [InlineData("", "")]
    [InlineData("// only   \n", "// only\n")]
    public void Blanks_are_put_in_order(string before, string? after) => Assert.Equal(after, Format(before));

    /// <summary>Cards and findings tell a marking: the layout changes neither.</summary>
    [Theory]
    [InlineData("fastener a{thread 1/2-20UNC-LH grade 10.9}", "1/2-20 UNC-LH", "10.9")]
    [InlineData("fastener a{thread 1   1/8 - 7UNC LH grade A2 -70}", "1 1/8-7 UNC LH", "A2-70")]
    [InlineData("fastener a{thread M8x1 . 25 // fine\nLH grade 8.8}", "M8x1.25 LH", "8.8")]
    public void A_marking_says_the_same_however_it_is_laid_out(string before, string thread, string grade)
    {
        Assert.Equal([thread, grade], Markings(before));
        Assert.Equal([thread, grade], Markings(Format(before)!));

        static IEnumerable<string> Markings(string text) => Sample.Parse(text).Root.DescendantsAndSelf().Select(node => node switch
        {
            ThreadPropertySyntax one => one.Designation,
            GradePropertySyntax one => one.Grade,
            _ => "",
        }).Where(marking => marking.Length > 0);
    }

    [Fact]
    public void A_block_stays_as_the_author_has_it_on_one_line_or_on_several() =>
        Same("""
            part seat "seat" { mass 31 kg  held by 4 bolt as bolts }
            """.Replace("part", "machine m { part", StringComparison.Ordinal) + " }\n", """
            machine m {
              part seat "seat" {
                mass 31 kg  hoist
                held by 4 bolt as bolts { at "base" }

                aside "Tilt it."
              }
            }

            """);

    [Fact]
    public void Comments_stay_with_their_line() =>
        Same("""
            // Above.
            machine m {  // behind the brace
              // Inside.
              mass 3 kg  // behind a sentence

              // Alone.

              part p {
                mass 1 kg
              }  // behind a block
              // Last.
            }
            // Below.

            """);

    [Fact]
    public void A_sentence_that_is_too_long_opens_its_block_then_breaks_at_its_clauses()
    {
        var lots = new string('x', 60);
        Same(
            $$"""
            machine m {
              part p {
                wired by 2 ring_post as {{lots}} {
                  at "B+ and B−"  to loom  on traction  behind controller_lid  torque 50 ± 5 lbf.in
                }
                aside "{{lots}}"
                  needs {{lots}}, {{lots}}
              }
            }

            """);
        Assert.Equal(
            $$"""
            machine m {
              part p {
                aside "{{lots}}"
                  needs {{lots}}, a
              }
            }

            """,
            Format($"machine m {{\n part p {{\n aside \"{lots}\" needs {lots}, a\n }}\n}}\n"));
    }

    [Fact]
    public void A_test_is_laid_out_like_any_block_and_breaks_before_what_is_open()
    {
        var lots = new string('x', 60);
        Same(
            $$"""
            machine m {
              energy e {
                voltage 400 V ac
                verify "{{lots}}" at posts expect <= 5 V {
                  behind lid, {{lots}}  tool meter
                }
              }
            }
            procedure p on m {
              stage "s" { isolate e  verify e }
              refit {
                test "a" before fit lid { power e, f  check "b"  while lid open because "c" }
                test "{{lots}}" {
                  power e
                  while lid, {{lots}} open
                    because "{{lots}}"
                  warning "b"
                  task "c" in background { time 5 min }
                }
                restore e
                  while {{lots}}, {{lots}} open
                  because "{{lots}}"
              }
            }

            """);
        Assert.Equal(
            "procedure p on m { refit { test \"a\" { power e, f[1]  check \"b\"  while lid open because \"c\" } } }\n",
            Format("procedure p on m {refit{test \"a\"{power e ,f [1] check \"b\" while lid open because \"c\"}}}"));
    }

    [Fact]
    public void Sentences_that_no_longer_fit_on_their_line_get_one_each()
    {
        var text = new string('x', 50);
        Assert.Equal(
            $$"""
            machine m {
              part a "{{text}}"
              part b "{{text}}"
              part c
            }

            """,
            Format($"machine m {{ part a \"{text}\" part b \"{text}\" part c }}"));
    }

    [Fact]
    public void A_file_with_an_error_in_its_text_is_left_alone() => Assert.Null(Format("machine m {"));

    private static void Same(params string[] texts) => Assert.All(texts, text => Assert.Equal(text, Format(text)));

    private static string? Format(string text) => Formatter.Format(Sample.Parse(text));
}
