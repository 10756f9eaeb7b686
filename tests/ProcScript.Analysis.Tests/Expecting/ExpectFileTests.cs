using ProcScript.Analysis.Expecting;

namespace ProcScript.Analysis.Tests.Expecting;

public sealed class ExpectFileTests
{
    [Fact]
    public void Sentences_are_read_with_comments_and_blank_lines_between()
    {
        var file = ExpectFile.Parse(
            "shop/cab.expect",
            """
            // The cab.
            pack door_out-left with rail, gas without beacon
              strip  undo hinge_bolts[left], // in this order
                     remove lamp[front,left]
              steps 14
              time 0.5 .. 1.5 h
            pack door_out-right without rail
              not proven

            file tests/a b.proc
              PRC3001 at 12
              PRC5002
            file ../other.proc
              nothing
            """);

        Assert.Empty(file.Problems);
        var pack = Assert.IsType<PackSection>(file.Sections[0]);
        Assert.Equal((1, "door_out-left"), (pack.Line, pack.Job));
        Assert.Equal(["rail", "gas"], pack.With);
        Assert.Equal(["beacon"], pack.Without);
        Assert.Equal(["undo hinge_bolts[left]", "remove lamp[front, left]"], Assert.IsType<OrderExpectation>(file.Expectations[0]).Steps);
        Assert.Equal(14, Assert.IsType<CountExpectation>(file.Expectations[1]).Count);
        Assert.Equal((30, 90), (((TimeExpectation)file.Expectations[2]).Least, ((TimeExpectation)file.Expectations[2]).Most));
        Assert.IsType<NotProvenExpectation>(file.Expectations[3]);
        Assert.Equal("shop/tests/a b.proc", Assert.IsType<FileSection>(file.Sections[2]).Path);
        Assert.Equal(12, Assert.IsType<FindingExpectation>(file.Expectations[4]).At);
        Assert.Null(Assert.IsType<FindingExpectation>(file.Expectations[5]).At);
        Assert.Equal("other.proc", Assert.IsType<FileSection>(file.Sections[3]).Path);
        Assert.IsType<NoFindingExpectation>(file.Expectations[6]);
    }

    [Theory]
    [InlineData("steps 14", "what it is about is missing; write 'pack JOB' or 'file PATH' above it")]
    [InlineData("pack", "name the job, as its folder of cards is named: 'pack seat_out', 'pack door_out-left with rail'")]
    [InlineData("pack a rail", "'rail' is not understood here; after the job stands nothing, or its options: 'with rail', 'with rail, gas', 'without gas', 'with rail without gas'")]
    [InlineData("pack a with", "'with' is not understood here; after the job stands nothing, or its options: 'with rail', 'with rail, gas', 'without gas', 'with rail without gas'")]
    [InlineData("file", "name the file, from the folder of this one: 'file cab.proc'")]
    [InlineData("file ../../x.proc", "'../../x.proc' leads out of the library")]
    [InlineData("pack a\nsteps", "write how many: 'steps 14'")]
    [InlineData("pack a\nsteps many", "write how many: 'steps 14'")]
    [InlineData("pack a\nstrip seat", "a step is a verb and an item, with commas between steps: 'strip undo seat_bolts, remove seat'")]
    [InlineData("pack a\ntime 20 min", "a time is a band in min or h, the lesser first: 'time 20 .. 35 min'")]
    [InlineData("pack a\ntime 35 .. 20 min", "a time is a band in min or h, the lesser first: 'time 20 .. 35 min'")]
    [InlineData("pack a\nweight 3", "'weight' can't be expected of a pack; there are: strip, work, refit, time, bags, orders, people, steps, tools, not proven")]
    [InlineData("file a.proc\nPRC9999 at 3", "there is no rule 'PRC9999'; write its code and its line, 'PRC3002 at 45', or 'nothing'")]
    [InlineData("file a.proc\nPRC3001 at", "write a rule's code and the line of its finding, 'PRC3002 at 45', or 'nothing'")]
    public void What_is_not_understood_says_what_to_write(string text, string message)
    {
        var file = ExpectFile.Parse("shop/cab.expect", text);

        Assert.Equal([(text.Count(letter => letter == '\n'), message)], file.Problems);
    }
}
