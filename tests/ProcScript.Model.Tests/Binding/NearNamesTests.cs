using CsCheck;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Names;

namespace ProcScript.Model.Tests.Binding;

/// <summary>What an unknown name may have meant.</summary>
public sealed class NearNamesTests
{
    [Theory]
    [InlineData("seat_bolt", "seat_bolts")]
    [InlineData("setabolts", "seat_bolts")]
    [InlineData("Seat_Bolts", "seat_bolts")]
    [InlineData("roof_botls", "roof_bolts")]
    [InlineData("rof", "roof")]
    public void A_slip_is_seen_through(string wanted, string meant) => Assert.Equal([meant], Find(wanted));

    [Theory]
    [InlineData("door")]
    [InlineData("x")]
    [InlineData("")]
    [InlineData("wheel_5")]
    [InlineData("something_else_altogether")]
    public void A_guess_is_only_made_where_it_is_likely(string wanted) => Assert.Empty(Find(wanted));

    [Fact]
    public void At_most_three_are_named() =>
        Assert.Equal(["cap_a", "cap_b", "cap_c"], new NearNames(["cap_d", "cap_c", "cap_b", "cap_a"]).Find("cap_x", new FindingSink()));

    [Fact]
    public void After_a_hundred_unknown_names_no_more_are_looked_for()
    {
        var sink = new FindingSink();
        var near = new NearNames(["roof"]);
        var found = Enumerable.Range(0, 150).Count(_ => !near.Find("rof", sink).IsEmpty);
        Assert.Equal(100, found);
    }

    /// <summary>Against the textbook recurrence over the whole table (optimal string alignment).</summary>
    [Fact]
    public void The_distance_is_that_of_the_whole_table_up_to_the_limit() =>
        Gen.Select(Gen.String[Gen.Char["abcAB"], 0, 9], Gen.String[Gen.Char["abcAB"], 0, 9], Gen.Int[0, 4]).Sample((first, second, limit) =>
        {
            var whole = WholeTable(first.ToLowerInvariant(), second.ToLowerInvariant());
            var found = EditDistance.Between(first, second, limit);
            return whole <= limit ? found == whole : found > limit;
        });

    private static IEnumerable<string> Find(string wanted) =>
        new NearNames(["seat_bolts", "roof_bolts", "roof", "harness", "wheel_1", "wheel_2"]).Find(wanted, new FindingSink());

    private static int WholeTable(string first, string second)
    {
        var table = new int[first.Length + 1, second.Length + 1];
        for (var i = 0; i <= first.Length; i++)
        {
            for (var j = 0; j <= second.Length; j++)
            {
                table[i, j] = (i, j) switch
                {
                    (0, _) => j,
                    (_, 0) => i,
                    _ => Math.Min(
                        Math.Min(table[i - 1, j], table[i, j - 1]) + 1,
                        table[i - 1, j - 1] + (first[i - 1] == second[j - 1] ? 0 : 1)),
                };
                if (i > 1 && j > 1 && first[i - 1] == second[j - 2] && first[i - 2] == second[j - 1])
                {
                    table[i, j] = Math.Min(table[i, j], table[i - 2, j - 2] + 1);
                }
            }
        }

        return table[first.Length, second.Length];
    }
}
