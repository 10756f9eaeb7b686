using ProcScript.Analysis.Bags;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans.Words;
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
    [InlineData("thread M8x1  length 25 mm  grade 8.8  drive socket", "thread M8x1.25 and M8x1")]
    [InlineData("thread M8x1.25-LH  length 25 mm  grade 8.8  drive socket", "thread M8x1.25 and M8x1.25-LH")]
    [InlineData("thread 5/16-18 UNC  length 25 mm  grade 8.8  drive socket", "thread M8x1.25 and 5/16-18 UNC")]
    public void What_differs_makes_look_alikes(string other, string difference)
    {
        var (one, two) = Kinds(Plain, other);

        Assert.True(HardwareSort.AreLookAlikes(one, two));
        Assert.Equal([difference], HardwareSort.Differences(one, two));
    }

    [Theory]
    [InlineData("thread M8x1.25  length 2.5 cm  grade 8.8  drive socket  torque 30 N.m  spare 10 %  time 9 s")]
    [InlineData("thread M6x1  length 40 mm  grade 8.8  drive socket")]
    [InlineData("thread 3/8-16 UNC  length 40 mm  grade 8.8  drive socket")]
    [InlineData("thread \"ST8\"  length 40 mm  grade 8.8  drive socket")]
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
        Assert.Equal(words, HardwareSort.Words(Wordbook.English, Kinds(Plain, Plain, title).One));

    [Fact]
    public void The_words_name_the_thread_where_a_look_alike_has_another()
    {
        var (coarse, fine) = Kinds(Plain, "thread M8x1  length 25 mm  grade 8.8  drive socket", "M8 × 25 bolt 8.8");

        Assert.Equal("M8 × 25 bolt 8.8, thread M8x1.25", HardwareSort.Words(Wordbook.English, coarse, fine));
        Assert.Equal("M8 × 25 bolt 8.8, thread M8x1", HardwareSort.Words(Wordbook.English, fine, coarse));
    }

    [Theory]
    [InlineData("thread M8x1.25  length 40 mm", "fit each other's holes")]
    [InlineData("thread M8x1  length 40 mm", "start in each other's holes and jam")]
    [InlineData("thread M8x1.25-LH  length 40 mm", "are alike but for the hand of their threads, and jam in each other's holes")]
    public void What_goes_wrong_is_told(string other, string words)
    {
        var (one, two) = Kinds(Plain, other);

        Assert.Equal(words, HardwareSort.Fit(one, two));
    }

    [Fact]
    public void A_left_hand_thread_is_told_once()
    {
        var (plain, marked) = Kinds("thread M8x1.25-LH", "thread M8 LH", "left-hand nut");
        var (nut, _) = Kinds("thread M8x1.25-LH", "thread M8", "nut");

        Assert.Equal(("left-hand nut", "left-hand nut"), (ItemWords.Of(plain, Wordbook.English), ItemWords.Of(marked, Wordbook.English)));
        Assert.Equal("nut, left-hand thread", ItemWords.Of(nut, Wordbook.English));
    }

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
