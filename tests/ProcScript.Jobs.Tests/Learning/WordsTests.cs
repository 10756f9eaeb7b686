using ProcScript.Jobs.Learning;

namespace ProcScript.Jobs.Tests.Learning;

/// <summary>Times, spreads and notes, as they are told.</summary>
public sealed class WordsTests
{
    [Theory]
    [InlineData(0.2, "1 s")]
    [InlineData(8.4, "8 s")]
    [InlineData(12.4, "10 s")]
    [InlineData(58, "1 min")]
    [InlineData(66, "70 s")]
    [InlineData(94, "90 s")]
    [InlineData(118, "2 min")]
    [InlineData(147, "2.5 min")]
    [InlineData(1_030, "17 min")]
    [InlineData(2_900, "50 min")]
    [InlineData(9_300, "2.5 h")]
    public void A_time_is_written_as_one_would_write_it(double seconds, string written) => Assert.Equal(written, TimeWords.Written(TimeWords.Rounded(seconds)));

    [Fact]
    public void A_rounded_time_stays_as_it_is()
    {
        for (var seconds = 2.0; seconds < 40_000; seconds *= 1.003)
        {
            var rounded = TimeWords.Rounded(seconds);
            Assert.Equal(rounded, TimeWords.Rounded(rounded));
            Assert.InRange(rounded / seconds, 0.79, 1.25);
        }
    }

    [Theory]
    [InlineData(6.44, "6.4 s")]
    [InlineData(19.97, "20 s")]
    [InlineData(59.6, "1 min")]
    [InlineData(130, "2 min 10 s")]
    [InlineData(3_599.7, "60 min")]
    [InlineData(4_790, "1 h 20 min")]
    public void A_measured_time_is_said_in_full(double seconds, string said) => Assert.Equal(said, TimeWords.Said(seconds));

    [Theory]
    [InlineData(new double[] { 3, 1, 2 }, 1, 2, 3)]
    [InlineData(new double[] { 4, 1, 2, 3 }, 1, 2.5, 4)]
    [InlineData(new double[] { 5, 1, 2, 3, 4 }, 2, 3, 4)]
    [InlineData(new double[] { 1, 1, 1, 1, 1, 900 }, 1, 1, 1)]
    public void The_spread_is_the_middle_half_or_all_of_few(double[] figures, double low, double median, double high) =>
        Assert.Equal(new Spread(figures.Length, low, median, high), Spread.Of(figures));

    [Theory]
    [InlineData("Front left thread is tight, clean it with a brush", "front left thread is tight; clean with brush", true)]
    [InlineData("the bracket is bent", "The bracket: is bent!", true)]
    [InlineData("the bracket is bent", "the bracket is not bent", false)]
    [InlineData("Klammer ist gebrochen", "Klammer ist nicht gebrochen", false)]
    [InlineData("torque is 20 here", "torque is 25 here", false)]
    [InlineData("the clip is brittle", "mind the loom", false)]
    [InlineData("don't pull", "dont pull", true)]
    [InlineData("!", "?", false)]
    public void Notes_are_alike_by_their_words(string one, string other, bool alike)
    {
        Assert.Equal(alike, NoteWords.AreAlike(NoteWords.Of(one), NoteWords.Of(other)));
        Assert.Equal(alike, NoteWords.AreAlike(NoteWords.Of(other), NoteWords.Of(one)));
    }

    [Fact]
    public void Groups_do_not_depend_on_the_order()
    {
        string[] notes = ["a b c d e f", "b c d e f g", "c d e f g h", "x y", "y x"];
        var groups = Groups(notes);

        Assert.Equal(2, groups.Count);
        Assert.All(Permutations(notes), order => Assert.Equal(groups, Groups(order)));

        static List<string> Groups(IEnumerable<string> told) => [.. NoteWords.Group(told, one => one).Select(group => string.Join('|', group.Order())).Order()];
    }

    private static IEnumerable<string[]> Permutations(string[] all) => all.Length <= 1
        ? [all]
        : all.SelectMany((first, i) => Permutations([.. all.Where((_, j) => j != i)]).Select(rest => (string[])[first, .. rest]));
}
