using ProcScript.Analysis.Baselines;
using ProcScript.Analysis.Reports;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Tests.Reports;

public sealed class BaselineTests
{
    private const string Head = "clip pin \"push pin\"\nmachine press \"Press\" {\n  part guard \"guard\" { held by 4 pin as guard_pins }\n}\n";

    [Fact]
    public void A_library_is_clean_against_its_own_baseline()
    {
        var report = Check(3);
        var compared = Compare(report, Read(report));

        Assert.Equal(3, report.Findings.Length);
        Assert.Empty(compared.Findings);
        Assert.Equal(3, compared.Silenced.Length);
        Assert.All(compared.Silenced, silenced => Assert.Equal(SilencingKind.Baseline, silenced.Silencing!.Kind));
        Assert.Equal(3, ReportCounts.Of(compared).Known);
    }

    [Fact]
    public void One_more_of_the_same_is_new()
    {
        var compared = Compare(Check(3), Read(Check(2)));

        Assert.Equal("PRC5108", Assert.Single(compared.Findings).Finding.Rule.Code);
        Assert.Equal(2, compared.Silenced.Length);
    }

    [Fact]
    public void One_fewer_is_found_at_its_entry()
    {
        var baseline = Read(Check(3));
        var stale = Assert.Single(Compare(Check(1), baseline).Findings).Finding;

        Assert.Equal("PRC7031", stale.Rule.Code);
        Assert.Equal("PRC5108 is found once in x.proc where the baseline has 3", stale.Message);
        Assert.Equal("baseline.json", stale.Primary.Path);
        Assert.Equal($"\"{baseline.Entries[0].Fingerprint}\"", baseline.Text.Slice(stale.Primary.Span));
    }

    [Fact]
    public void What_is_gone_altogether_is_found_too()
    {
        Assert.Equal("PRC5108 is no longer found in x.proc", Assert.Single(Compare(Check(0), Read(Check(3))).Findings).Finding.Message);
    }

    [Fact]
    public void Of_files_that_were_not_looked_at_nothing_is_said()
    {
        Assert.Empty(BaselineComparison.Compare(Check(0), Read(Check(3)), _ => false).Findings);
    }

    [Fact]
    public void It_shrinks_by_itself_and_grows_only_when_told()
    {
        var three = Read(Check(3));

        var shrunk = BaselineUpdate.Of(Check(1), three, All, acceptNew: false);
        var refused = BaselineUpdate.Of(Check(4), three, All, acceptNew: false);
        var grown = BaselineUpdate.Of(Check(4), three, All, acceptNew: true);

        Assert.Equal((1, 2, 0, 0), (shrunk.Kept, shrunk.Dropped, shrunk.Added, shrunk.Refused));
        Assert.Equal(1, Assert.Single(shrunk.Entries).Count);
        Assert.Equal((3, 0, 0, 1), (refused.Kept, refused.Dropped, refused.Added, refused.Refused));
        Assert.Equal(three.Entries, refused.Entries);
        Assert.Equal((3, 0, 1, 0), (grown.Kept, grown.Dropped, grown.Added, grown.Refused));
        Assert.Equal(4, Assert.Single(grown.Entries).Count);
        Assert.Empty(BaselineUpdate.Of(Check(0), three, All, acceptNew: false).Entries);
        Assert.Equal(three.Entries, BaselineUpdate.Of(Check(0), three, _ => false, acceptNew: false).Entries);
    }

    [Fact]
    public void An_error_is_never_written_down()
    {
        var report = Lines("    release guard_pins\n    task \"Wipe the seat as required.\"\n");
        var update = BaselineUpdate.Of(report, earlier: null, All, acceptNew: true);

        Assert.Equal(["PRC3006", "PRC5108"], report.Findings.Select(reported => reported.Finding.Rule.Code));
        Assert.Equal((1, 1, 0), (update.Errors, update.Added, update.Refused));
        Assert.Equal("PRC5108", Assert.Single(update.Entries).Rule);
    }

    [Fact]
    public void An_error_that_an_earlier_program_wrote_down_is_told_and_its_entry_goes_with_the_next_writing()
    {
        var report = Lines("    release guard_pins\n");
        var error = Assert.Single(report.Findings);
        var old = Read(Baseline.Write([new BaselineEntry("x.proc", "PRC3006", error.Fingerprint.Key, 1, error.Finding.Message)]));

        var compared = Compare(report, old);
        var update = BaselineUpdate.Of(report, old, All, acceptNew: true);

        Assert.Equal("PRC3006", Assert.Single(compared.Findings).Finding.Rule.Code);
        Assert.Empty(compared.Silenced);
        Assert.Empty(update.Entries);
        Assert.Equal((0, 1, 1), (update.Kept, update.Dropped, update.Errors));
    }

    [Fact]
    public void It_is_written_sorted_an_entry_a_line_and_read_again()
    {
        BaselineEntry[] entries =
        [
            new("b.proc", "PRC3001", "ff", 1, "\"quoted\" & <marked>\nwith `names`"), new("b.proc", "PRC3001", "00", 2, ""), new("a/ä.proc", "PRC5001", "11", 1, "x"),
        ];
        var text = Baseline.Write(entries);

        Assert.Equal(text, Baseline.Write(Read(text).Entries));
        Assert.Equal(["11", "00", "ff"], Read(text).Entries.Select(entry => entry.Fingerprint));
        Assert.Equal(9, text.Count(letter => letter == '\n'));
        Assert.Empty(Read(Baseline.Write([])).Entries);
    }

    [Theory]
    [InlineData("", "line 1: ")]
    [InlineData("null", "format")]
    [InlineData("[]", "a baseline")]
    [InlineData("{}", "a baseline")]
    [InlineData("{\"version\":\"2.1.0\",\"runs\":[]}", "a baseline")]
    [InlineData("{\"format\":\"other\",\"version\":1,\"findings\":[]}", "format")]
    [InlineData("{\"format\":\"procscript baseline\",\"version\":2,\"findings\":[]}", "newer")]
    [InlineData("{\"format\":\"procscript baseline\",\"version\":1}", "a baseline")]
    [InlineData("{\"format\":\"procscript baseline\",\"version\":1,\"findings\":null}", "a baseline")]
    [InlineData("{\"format\":\"procscript baseline\",\"version\":1,\"findings\":[null]}", "is null")]
    [InlineData("{\"format\":\"procscript baseline\",\"version\":1,\"findings\":[{\"file\":\"a\",\"rule\":\"b\",\"fingerprint\":\"c\",\"count\":0,\"message\":\"\"}]}", "count of c is 0")]
    [InlineData("{\n<<<<<<< ours\n", "line 2: ")]
    public void Anything_else_is_refused_with_a_reason(string text, string reason)
    {
        Assert.Contains(reason, Assert.Throws<BaselineException>(() => Read(text)).Message, StringComparison.Ordinal);
    }

    private static bool All(string path) => true;

    /// <summary>A library in which a vague word is found so many times.</summary>
    private static LibraryReport Check(int vague) => Lines(string.Concat(Enumerable.Repeat("    task \"Wipe the seat as required.\"\n", vague)));

    private static LibraryReport Lines(string lines) =>
        Checked.Text($"{Head}procedure p \"P\" on press {{\n  stage \"S\" {{\n    release guard_pins\n{lines}    remove guard\n  }}\n}}\n").Report;

    private static Baseline Read(LibraryReport report) => Read(Baseline.Write(BaselineUpdate.Of(report, earlier: null, All, acceptNew: false).Entries));

    private static Baseline Read(string text) => Baseline.Read(new SourceText("baseline.json", text));

    private static LibraryReport Compare(LibraryReport report, Baseline baseline) => BaselineComparison.Compare(report, baseline, All);
}
