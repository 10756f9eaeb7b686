namespace ProcScript.Outside.Tests.Orders;

/// <summary>
/// Two assembly lines of A. Scholl (1993), Data of Assembly Line Balancing Problems, TH Darmstadt (read), written as machines: what a task
/// comes after is what its part goes on before, so that taking apart runs the line backwards. The numbers of orders are not published:
/// another program counted them.
/// </summary>
public sealed class AssemblyLineTests
{
    [Fact]
    public void Mertens_with_seven_tasks_has_45_orders() => Assert.Equal((45, 45), Precedence.CountOrders(
        """
        machine mertens "Mertens, seven tasks" {
          part t1 "task 1" { behind t2, t4 }
          part t2 "task 2" { behind t3, t5 }
          part t3 "task 3"
          part t4 "task 4" { behind t7 }
          part t5 "task 5" { behind t6 }
          part t6 "task 6"
          part t7 "task 7"
        }
        procedure apart "Take all apart" on mertens {
          stage "All" { strip t1 }
        }
        """));

    [Fact]
    public void Jackson_with_eleven_tasks_has_756_orders() => Assert.Equal((756, 756), Precedence.CountOrders(
        """
        machine jackson "Jackson, eleven tasks" {
          part t1 "task 1" { behind t2, t3, t4, t5 }
          part t2 "task 2" { behind t6 }
          part t3 "task 3" { behind t7 }
          part t4 "task 4" { behind t7 }
          part t5 "task 5" { behind t7 }
          part t6 "task 6" { behind t8 }
          part t7 "task 7" { behind t9 }
          part t8 "task 8" { behind t10 }
          part t9 "task 9" { behind t11 }
          part t10 "task 10" { behind t11 }
          part t11 "task 11"
        }
        procedure apart "Take all apart" on jackson {
          stage "All" { strip t1 }
        }
        """));
}
