using CsCheck;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Tests.Quantities;

/// <summary>The table of units.</summary>
public sealed class UnitsTests
{
    [Fact]
    public void Every_unit_is_found_by_its_spelling_and_by_its_symbol() => Assert.All(Units.All, unit =>
    {
        Assert.Same(unit, Units.Find(Units.SpellingOf(unit)));
        Assert.Same(unit, Units.Find(unit.Symbol));
    });

    [Fact]
    public void No_two_units_share_a_spelling() =>
        Assert.Equal(Units.All.Length, Units.All.Select(Units.SpellingOf).Distinct().Count());

    [Theory]
    [InlineData("Nm")]
    [InlineData("n.m")]
    [InlineData("")]
    [InlineData("N..m")]
    [InlineData("IN")]
    public void Nothing_else_is_a_unit(string spelling) => Assert.Null(Units.Find(spelling));

    [Fact]
    public void Every_dimension_but_the_count_has_a_unit_and_words()
    {
        foreach (var dimension in Enum.GetValues<Dimension>())
        {
            Assert.NotEmpty(dimension.WithArticle());
            Assert.Equal(dimension != Dimension.Count, Units.Of(dimension).Any());
        }
    }

    [Fact]
    public void Converting_there_and_back_gives_the_same_quantity() =>
        Gen.Select(Gen.Int[0, Units.All.Length - 1], Gen.Int[0, Units.All.Length - 1], Gen.Double[-1e6, 1e6])
            .Select((from, to, value) => (From: Units.All[from], To: Units.All[to], Value: value))
            .Where(one => one.From.Dimension == one.To.Dimension)
            .Sample(one =>
            {
                var quantity = new Quantity(one.Value, one.Value - 1, one.Value + 1, one.From, QuantityForm.PlusMinus);
                var back = quantity.In(one.To).In(one.From);
                var scale = Math.Abs(one.Value) + 1 + Math.Abs(one.From.Offset / one.From.Factor);
                Assert.Equal(quantity.Nominal, back.Nominal, 1e-9 * scale);
                Assert.Equal(quantity.Low, back.Low, 1e-9 * scale);
                Assert.Equal(one.From, back.Unit);
            });
}
