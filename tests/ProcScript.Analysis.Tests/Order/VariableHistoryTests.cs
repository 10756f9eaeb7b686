using System.Collections.Immutable;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.Order;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Tests.Order;

/// <summary>Which way of a choice an action goes by, where several are open at different moments.</summary>
public sealed class VariableHistoryTests
{
    private static readonly Machine Machine = Checked.Unasked(
        """
        machine m "M" { part left "left flap"  part right "right flap" }
        procedure p "P" on m { stage "S" { remove left remove right } }
        """).Only.Procedure.Machine;

    private static readonly AnyOf EitherOff = new([new PartOut(Machine.Parts[0]), new PartOut(Machine.Parts[1])]);

    private static readonly StateLayout Layout = new(Machine);

    [Fact]
    public void The_way_that_is_open_there_is_taken() => Assert.Equal((1, (int?)1, (int?)null), Find([Off(0), Off(1), On(0), Nothing], 3));

    [Fact]
    public void Of_two_that_are_open_the_authors_first_is_taken() => Assert.Equal((0, (int?)1, (int?)null), Find([Off(1), Off(0), Nothing], 2));

    [Fact]
    public void Of_two_that_open_later_the_next_is_taken()
    {
        Assert.Equal((1, (int?)1, (int?)null), Find([Nothing, Off(1), Off(0)], 0));
        Assert.Equal((0, (int?)1, (int?)null), Find([Nothing, Off(0), Off(1)], 0));
    }

    [Fact]
    public void Of_two_that_were_open_the_last_is_taken()
    {
        Assert.Equal((0, (int?)0, (int?)3), Find([Off(0), Off(1), On(1), On(0), Nothing], 4));
        Assert.Equal((1, (int?)1, (int?)3), Find([Off(0), Off(1), On(0), On(1), Nothing], 4));
    }

    [Fact]
    public void What_opens_later_comes_before_what_was_open() => Assert.Equal((1, (int?)3, (int?)null), Find([Off(0), On(0), Nothing, Off(1)], 2));

    [Fact]
    public void Where_neither_ever_opens_there_is_no_way() => Assert.Null(new VariableHistory(Layout, MachineState.Whole(Layout), [Nothing]).Find(EitherOff, 0));

    private static CausalStep Nothing => new([], []);

    private static CausalStep Off(int part) => Moves(part, PartPlace.Fitted, PartPlace.Out);

    private static CausalStep On(int part) => Moves(part, PartPlace.Out, PartPlace.Fitted);

    private static CausalStep Moves(int part, PartPlace from, PartPlace to) => new([], [new StateChange(new StateVariable(StateKind.Place, part), (int)from, (int)to)]);

    /// <summary>The number of the way, and the stretch in which it is open.</summary>
    private static (int Way, int? Begin, int? End) Find(ImmutableArray<CausalStep> sequence, int index)
    {
        var (way, stretch) = Assert.NotNull(new VariableHistory(Layout, MachineState.Whole(Layout), sequence).Find(EitherOff, index));
        return (EitherOff.Ways.IndexOf(way), stretch.Begin, stretch.End);
    }
}
