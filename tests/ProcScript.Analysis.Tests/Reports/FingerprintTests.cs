using CsCheck;
using ProcScript.Analysis.Reports;

namespace ProcScript.Analysis.Tests.Reports;

/// <summary>A finding is known again after changes that have nothing to do with it.</summary>
public sealed class FingerprintTests
{
    private const string Machine =
        """
        clip pin "push pin"
        tool key "key"
        machine press "Press" {
          part guard "guard" { held by 4 pin as guard_pins }
          part lamp "lamp" { held by 2 pin as lamp_pins }
          part spare "spare cover"
        }
        """;

    private static readonly string[] Procedures =
    [
        Procedure("one", "release guard_pins", "release guard_pins", "remove guard"),
        Procedure("two", "remove guard // the pins hold it", "release guard_pins"),
        Procedure("three", "release guard_pins", "release guard_pins", "release guard_pins", "remove guard"),
        Procedure("four", "remove spare", "take off lamp"),
        Procedure("five", "release lamp_pins { how \"Turn // slowly.\" }", "remove lamps"),
    ];

    [Fact]
    public void The_sample_has_findings_that_share_a_key()
    {
        var fingerprints = Of(Procedures);

        Assert.True(fingerprints.Count >= 6, string.Join('\n', fingerprints));
        Assert.Equal(fingerprints.Count, fingerprints.Distinct().Count());
        Assert.Contains(fingerprints, fingerprint => fingerprint.EndsWith("-3", StringComparison.Ordinal));
    }

    [Fact]
    public void They_outlive_other_orders_more_lines_blanks_comments_and_other_names()
    {
        var expected = Of(Procedures);
        var change = Gen.Select(Gen.Shuffle(Procedures), Gen.Int[0, 1000].Array[40], Gen.Bool);

        change.Sample(
            changed =>
            {
                var (order, noise, renames) = changed;
                var lines = string.Join('\n', [Machine, .. order]).Split('\n');
                var text = string.Join('\n', lines.SelectMany((line, i) => Noise(line, noise[i % noise.Length])));
                Assert.Equal(expected, Known(renames ? text.Replace("spare", "hood", StringComparison.Ordinal).Replace("\"Press\"", "\"Fly press\"", StringComparison.Ordinal) : text));
            },
            iter: 60,
            threads: 1);
    }

    [Fact]
    public void Another_line_another_file_and_another_rule_give_another()
    {
        var here = Known(Machine + "\n" + Procedures[1]);
        var elsewhere = Checked.Files(("y.proc", Machine + "\n" + Procedures[1])).Report.Findings.Select(found => found.Fingerprint.ToString());
        var otherLine = Known((Machine + "\n" + Procedures[1]).Replace("remove guard //", "remove lamp //", StringComparison.Ordinal));

        Assert.NotEmpty(here);
        Assert.Empty(here.Intersect(elsewhere));
        Assert.Empty(here.Intersect(otherLine));
    }

    [Fact]
    public void What_is_silenced_keeps_its_number_among_equals()
    {
        var open = Checked.Text(Machine + "\n" + Procedures[2]).Report;
        var allowed = Checked.Text(Machine + "\n" + Procedure(
            "three", "release guard_pins", "// proc: allow done-twice because \"They snap back.\"", "release guard_pins", "release guard_pins", "remove guard")).Report;

        Assert.Equal(2, open.Findings.Length);
        Assert.Single(allowed.Findings);
        var silenced = Assert.Single(allowed.Silenced);
        Assert.Equal(SilencingKind.Comment, silenced.Silencing!.Kind);
        Assert.Equal("They snap back.", silenced.Silencing.Reason);
        Assert.Equal(open.Findings[0].Fingerprint, silenced.Fingerprint);
        Assert.Equal(open.Findings[1].Fingerprint, allowed.Findings[0].Fingerprint);
    }

    private static string Procedure(string name, params string[] steps) =>
        $"procedure {name} \"Job {name}\" on press {{\n  stage \"All\" {{\n{string.Concat(steps.Select(step => $"    {step}\n"))}  }}\n}}";

    /// <summary>Blank lines and comments before a line, other blanks at its beginning and its end.</summary>
    private static IEnumerable<string> Noise(string line, int noise)
    {
        for (var i = 0; i < noise % 3; i++)
        {
            yield return i == 0 ? "" : "  // Nothing to see here.";
        }

        yield return new string(' ', noise % 5) + (noise % 7 == 0 ? line.Replace("  ", "\t", StringComparison.Ordinal) : line) + new string(' ', noise % 4);
    }

    private static List<string> Of(IEnumerable<string> procedures) => Known(string.Join('\n', procedures.Prepend(Machine)));

    private static List<string> Known(string text) => [.. Checked.Text(text).Report.Findings.Select(found => found.Fingerprint.ToString()).Order(StringComparer.Ordinal)];
}
