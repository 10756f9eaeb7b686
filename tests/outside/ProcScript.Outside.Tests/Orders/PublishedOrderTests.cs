using System.Globalization;
using System.Numerics;

namespace ProcScript.Outside.Tests.Orders;

/// <summary>
/// The number of orders in which a machine comes apart, against published counts of linear extensions. Each set of tasks is written as
/// a machine and a procedure; the refit is derived and proven, and has as many valid orders as the strip.
/// </summary>
public sealed class PublishedOrderTests
{
    [Theory]
    // OEIS A046873, linear extensions of the Boolean lattice; entry read.
    [InlineData("boolean_lattice", 2, "2")]
    [InlineData("boolean_lattice", 3, "48")]
    [InlineData("boolean_lattice", 4, "1680384")]
    // The same for n = 5; from memory.
    [InlineData("boolean_lattice", 5, "14807804035657359360")]
    // OEIS A000108, Catalan numbers; from memory.
    [InlineData("grid_2_by_n", 7, "429")]
    // OEIS A114714; read.
    [InlineData("grid_2_by_2_by_n", 4, "183958")]
    // OEIS A056971, heaps; read.
    [InlineData("binary_heap", 10, "3360")]
    // OEIS A000111, up-down numbers; read.
    [InlineData("zigzag_fence", 9, "7936")]
    // OEIS A332471; read.
    [InlineData("zigzag_with_pendants", 4, "174664")]
    public void A_family_has_as_many_orders_as_published(string family, int n, string published) =>
        AssertOrders(published, Precedence.Family(family, n));

    /// <summary>The counts of <c>poset-orders.txt</c>, which names the entry beside each.</summary>
    [Fact]
    public void Every_listed_family_has_as_many_orders_as_listed()
    {
        var rows = ReferenceData.Rows("poset-orders.txt");

        Assert.Equal(51, rows.Count);
        Assert.All(rows, row => AssertOrders(row[3], Precedence.Family(row[0], Number(row[1]))));
    }

    /// <summary>FindStat St000085, linear extensions of an ordered tree, as <c>tree-orders.txt</c> lists them; read.</summary>
    [Fact]
    public void Every_listed_tree_has_as_many_orders_as_listed()
    {
        var rows = ReferenceData.Rows("tree-orders.txt");

        Assert.Equal(33, rows.Count);
        Assert.All(rows, row => AssertOrders(row[1], Precedence.Tree(row[0])));
    }

    /// <summary>
    /// The assembly lines of A. Scholl (1993), Data of Assembly Line Balancing Problems, TH Darmstadt (read); their numbers of valid orders
    /// in <c>precedence-facts.txt</c> are not published: another program counted them.
    /// </summary>
    [Fact]
    public void Every_listed_assembly_line_has_as_many_orders_as_another_count()
    {
        var rows = ReferenceData.Rows("precedence-facts.txt");

        Assert.Equal(10, rows.Count);
        Assert.All(rows, row => AssertOrders(row[6], Precedence.Read(ReferenceData.Rows($"precedence-{row[0]}.txt"))));
    }

    /// <summary>The hook formula for forests: n! by the product of subtree sizes (Knuth, volume 3; read). Seven chains of three.</summary>
    [Fact]
    public void Chains_side_by_side_interleave_as_the_hook_formula_says()
    {
        var chains = new Precedence(21, [.. Enumerable.Range(0, 7).SelectMany(i => new[] { ((3 * i) + 1, (3 * i) + 2), ((3 * i) + 2, (3 * i) + 3) })]);
        var factorial = Enumerable.Range(1, 21).Aggregate(BigInteger.One, (product, i) => product * i);

        AssertOrders((factorial / BigInteger.Pow(6, 7)).ToString(CultureInfo.InvariantCulture), chains);
    }

    /// <summary>cs.stackexchange.com, question 3314 (read): the product A–B, B–C–E, B–D–F, put together from A, has six orders.</summary>
    [Fact]
    public void A_product_put_together_from_one_part_has_the_listed_orders()
    {
        var (strips, refits) = Precedence.CountOrders(
            """
            machine product "Product" {
              part a "A"
              part b "B" { behind c, d }
              part c "C" { behind e }
              part d "D" { behind f }
              part e "E"
              part f "F"
            }
            procedure apart "Apart" on product {
              stage "All" { strip b }
            }
            """);

        Assert.Equal((6, 6), (strips, refits));
    }

    private static void AssertOrders(string expected, Precedence tasks)
    {
        var (strips, refits) = tasks.CountOrders();
        Assert.Equal(BigInteger.Parse(expected, CultureInfo.InvariantCulture), strips);
        Assert.Equal(strips, refits);
    }

    private static int Number(string text) => int.Parse(text, CultureInfo.InvariantCulture);
}
