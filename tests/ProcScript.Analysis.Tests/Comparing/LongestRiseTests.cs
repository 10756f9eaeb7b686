using CsCheck;
using ProcScript.Analysis.Comparing;

namespace ProcScript.Analysis.Tests.Comparing;

public sealed class LongestRiseTests
{
    [Fact]
    public void It_rises_and_none_is_longer() => Gen.Shuffle(Enumerable.Range(0, 9).ToArray()).Sample(numbers =>
    {
        var rise = LongestRise.Of(numbers);

        var inOrder = numbers.Where(rise.Contains).ToList();
        Assert.Equal(inOrder.Order(), inOrder);
        var longest = Enumerable.Range(0, 1 << numbers.Length)
            .Select(choice => numbers.Where((_, i) => (choice >> i & 1) == 1).ToList())
            .Where(chosen => chosen.SequenceEqual(chosen.Order()))
            .Max(chosen => chosen.Count);
        Assert.Equal(longest, rise.Count);
    });

    [Fact]
    public void Of_nothing_it_is_nothing() => Assert.Empty(LongestRise.Of([]));
}
