using System.Globalization;
using CsCheck;
using ProcScript.Cards.Words;

namespace ProcScript.Cards.Tests.Words;

public sealed class WordsTests
{
    [Theory]
    [InlineData(0, "0 s")]
    [InlineData(0.2, "1 s")]
    [InlineData(119, "119 s")]
    [InlineData(120, "2 min")]
    [InlineData(121, "3 min")]
    [InlineData(3540, "59 min")]
    [InlineData(3541, "1 h")]
    [InlineData(5000, "1 h 24 min")]
    [InlineData(7200, "2 h")]
    public void A_duration_rounds_up_to_what_a_clock_shows(double seconds, string words) => Assert.Equal(words, Durations.InWords(seconds));

    // 10 kg = 22.0462 lb, 0.5 kg = 1.1023 lb: from the exact definition of the pound.
    [Theory]
    [InlineData(10, "10 kg (22 lb)")]
    [InlineData(0.5, "0.5 kg (1 lb)")]
    [InlineData(14.25, "14.3 kg (31 lb)")]
    public void A_mass_is_told_in_both_units(double kilograms, string words) => Assert.Equal(words, Masses.InWords(kilograms));

    [Theory]
    [InlineData(new int[0], "")]
    [InlineData(new[] { 4 }, "4")]
    [InlineData(new[] { 4, 5 }, "4, 5")]
    [InlineData(new[] { 6, 4, 5, 9, 4 }, "4–6, 9")]
    public void Steps_in_a_row_are_drawn_together(int[] steps, string words) => Assert.Equal(words, StepNumbers.InWords(steps));

    [Fact]
    public void No_step_is_lost_or_added_by_drawing_together() => Gen.Int[1, 60].Array[0, 40].Sample(steps =>
    {
        var read = StepNumbers.InWords(steps).Split(", ", StringSplitOptions.RemoveEmptyEntries).SelectMany(run =>
        {
            var ends = run.Split('–').Select(end => int.Parse(end, CultureInfo.InvariantCulture)).ToArray();
            return Enumerable.Range(ends[0], ends[^1] - ends[0] + 1);
        });

        Assert.Equal(steps.Distinct().Order(), read);
    });
}
