using ProcScript.Analysis.Bags;
using ProcScript.Model.Catalog;
using ProcScript.Model.Sources;

namespace ProcScript.Analysis.Tests.Bags;

public class HardwareSortTests
{
    private const string Plain = "thread M8x1.25  length 25 mm  grade 8.8  drive socket";

    [Theory]
    [InlineData("thread M8x1.25  length 40 mm  grade 8.8  drive socket", "length 25 mm and 40 mm")]
    [InlineData("thread M8x1.25  length 25 mm  grade 10.9  drive socket", "grade 8.8 and 10.9")]
    [InlineData("thread M8x1.25  length 25 mm  grade 8.8  coating \"zinc\"  drive socket", "coating not given and zinc")]
    [InlineData("thread M8x1.25  length 25 mm  grade 8.8  drive key", "drive socket and key")]
    [InlineData("thread M8x1.25  length 25 mm  grade 8.8  drive socket  thread locker", "thread locker no and yes")]
    [InlineData("thread M8x1.25  length 25 mm  grade 8.8  drive socket  oiled", "oil no and yes")]
    [InlineData("thread M8x1.25  grade 8.8  drive socket", "length 25 mm and not given")]
    [InlineData("thread M8  length 40 mm  grade 8.8  drive socket", "length 25 mm and 40 mm")]
    [InlineData("thread \"M8 × 1.25-6g\"  length 40 mm  grade 8.8  drive socket", "length 25 mm and 40 mm")]
    public void What_differs_makes_look_alikes(string other, string difference)
    {
        var (one, two) = Kinds(Plain, other);

        Assert.True(HardwareSort.AreLookAlikes(one, two));
        Assert.Equal([difference], HardwareSort.Differences(one, two));
    }

    [Theory]
    [InlineData("thread M8x1.25  length 2.5 cm  grade 8.8  drive socket  torque 30 N.m  spare 10 %  time 9 s")]
    [InlineData("thread M6x1  length 40 mm  grade 8.8  drive socket")]
    [InlineData("thread \"M8x1.25 LH\"  length 40 mm  grade 8.8  drive socket")]
    [InlineData("thread M8x1  length 40 mm  grade 8.8  drive socket")]
    [InlineData("length 40 mm  grade 8.8  drive socket")]
    public void The_same_piece_and_what_fits_other_holes_do_not(string other)
    {
        var (one, two) = Kinds(Plain, other);

        Assert.False(HardwareSort.AreLookAlikes(one, two));
    }

    [Theory]
    [InlineData("M8 × 25 bolt", "M8 × 25 bolt, 8.8")]
    [InlineData("M8 × 25 bolt 8.8", "M8 × 25 bolt 8.8")]
    [InlineData("M8 bolt", "M8 bolt, 25 mm, 8.8")]
    public void The_words_add_what_the_title_lacks(string title, string words) =>
        Assert.Equal(words, HardwareSort.Words(Kinds(Plain, Plain, title).One));

    private static (Kind One, Kind Other) Kinds(string one, string other, string title = "bolt")
    {
        var library = Model.LibraryBinder.Bind(
            MemorySourceStore.Of(
                "x.proc",
                $$"""
                tool socket "socket"
                tool key "key"
                fastener a "{{title}}" { {{one}} }
                fastener b "{{title}}" { {{other}} }
                """),
            TestContext.Current.CancellationToken);
        Assert.Empty(library.Findings);
        return (library.Kinds[0], library.Kinds[1]);
    }
}
