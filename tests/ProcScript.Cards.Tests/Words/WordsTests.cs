using System.Globalization;
using CsCheck;
using ProcScript.Cards.Words;
using ProcScript.Model.Quantities;

namespace ProcScript.Cards.Tests.Words;

public sealed class WordsTests
{
    [Theory]
    [InlineData(0, "0 min")]
    [InlineData(0.2, "30 s")]
    [InlineData(44, "30 s")]
    [InlineData(45, "1 min")]
    [InlineData(100, "1½ min")]
    [InlineData(119, "2 min")]
    [InlineData(149, "2 min")]
    [InlineData(150, "3 min")]
    [InlineData(1200, "20 min")]
    [InlineData(1300, "20 min")]
    [InlineData(1350, "25 min")]
    [InlineData(3449, "55 min")]
    [InlineData(3599, "1 h")]
    [InlineData(5000, "1 h 30 min")]
    [InlineData(7200, "2 h")]
    [InlineData(17000, "4 h 30 min")]
    [InlineData(86400, "24 h")]
    public void An_estimate_is_rounded_as_a_person_rounds_it(double seconds, string words) => Assert.Equal(words, Durations.InWords(seconds));

    [Theory]
    [InlineData(90, "90 s")]
    [InlineData(0.2, "1 s")]
    [InlineData(1320, "22 min")]
    [InlineData(43200, "12 h")]
    [InlineData(4000, "1 h 7 min")]
    public void A_figure_that_somebody_has_given_is_not_rounded(double seconds, string words) => Assert.Equal(words, Durations.Exact(seconds));

    /// <summary>Never further off than half a step, a step being half a minute at the start and an hour at the end.</summary>
    [Fact]
    public void Rounding_never_takes_more_than_half_a_step() => Gen.Double[30, 200_000].Sample(seconds =>
    {
        var step = seconds <= 120 ? 30 : seconds <= 1200 ? 60 : seconds <= 3600 ? 300 : seconds <= 14_400 ? 900 : seconds <= 36_000 ? 1800 : 3600;

        Assert.InRange(Durations.Rounded(seconds), seconds - (step / 2.0) - 1e-6, seconds + (step / 2.0) + 1e-6);
    });

    [Theory]
    [InlineData(19_000, new double[] { 3300, 1200, 14_500 }, "5 h 30 min", "1 h", "20 min", "4 h 10 min")]
    [InlineData(3300, new double[] { 1090, 480, 1730 }, "55 min", "18 min", "8 min", "29 min")]
    [InlineData(540, new double[] { 300, 0, 240 }, "9 min", "5 min", "0 min", "4 min")]
    [InlineData(30, new double[] { 14, 3, 13 }, "30 s", "30 s", "0 min", "0 min")]
    public void The_parts_of_an_estimate_add_up(double whole, double[] parts, string told, params string[] words)
    {
        Assert.Equal(told, Durations.InWords(whole));
        Assert.Equal(words, Durations.PartsInWords(whole, parts));
    }

    [Fact]
    public void The_parts_of_any_estimate_add_up_as_they_are_printed() => Gen.Double[0, 30_000].Array[1, 4].Sample(parts =>
    {
        var whole = parts.Sum();
        var told = Durations.PartsInWords(whole, parts);

        Assert.Equal(Minutes(Durations.InWords(whole)), told.Sum(Minutes));
        Assert.All(told.Zip(parts), one => Assert.InRange(Math.Abs(Minutes(one.First) - (one.Second / 60)), 0, 15 + (0.1 * one.Second / 60) + (whole > 36_000 ? 30 : 0)));
    });

    private static double Minutes(string words) => words.Split(' ').Chunk(2).Sum(pair =>
        (pair[0].EndsWith('½') ? 0.5 + int.Parse(pair[0][..^1], CultureInfo.InvariantCulture) : int.Parse(pair[0], CultureInfo.InvariantCulture)) * pair[1] switch { "s" => 1 / 60.0, "h" => 60, _ => 1 });

    [Fact]
    public void A_longer_time_is_never_told_shorter() => Gen.Select(Gen.Double[0, 90_000], Gen.Double[0, 90_000]).Sample((one, other) =>
        Assert.True(Durations.Rounded(Math.Min(one, other)) <= Durations.Rounded(Math.Max(one, other))));

    // 10 kg = 22.0462 lb, 0.5 kg = 1.1023 lb: from the exact definition of the pound.
    [Theory]
    [InlineData(10, "10 kg (22 lb)")]
    [InlineData(0.5, "0.5 kg (1 lb)")]
    [InlineData(14.25, "14.3 kg (31 lb)")]
    public void A_mass_is_told_in_both_units(double kilograms, string words) => Assert.Equal(words, Masses.InWords(kilograms, NumberStyle.English));

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
