using System.Globalization;
using System.Text;

namespace ProcScript.Outside.Tests.Orders;

/// <summary>
/// Assembly lines of A. Scholl (1993), Data of Assembly Line Balancing Problems, TH Darmstadt (read in place), written as machines that go
/// together as the line runs: what a task comes after is what its part goes on before, so that taking apart runs it backwards. The strip is left
/// to <c>strip</c>. The numbers of orders are not published: another program counted them.
/// </summary>
public sealed class AssemblyLineTests
{
    [Theory]
    [InlineData("mertens-7", 45)]
    [InlineData("jackson-11", 756)]
    public void A_line_that_is_stripped_from_its_first_task_has_as_many_orders_as_another_count(string line, int orders)
    {
        var tasks = Precedence.Read(ReferenceData.Rows($"precedence-{line}.txt"));
        var behind = tasks.Pairs.ToLookup(pair => pair.Earlier, pair => pair.Later);
        var text = new StringBuilder("machine line \"Line\" {\n");
        for (var task = 1; task <= tasks.Count; task++)
        {
            var later = string.Join(", ", behind[task].Select(other => $"t{other}"));
            text.Append(CultureInfo.InvariantCulture, $"  part t{task} \"task {task}\" {{{(later.Length == 0 ? "" : $" behind {later} ")}}}\n");
        }

        // Of both lines the first task goes before all others.
        text.Append("}\nprocedure apart \"Take all apart\" on line {\n  stage \"All\" { strip t1 }\n}\n");

        Assert.Equal((orders, orders), Precedence.CountOrders(text.ToString()));
    }
}
