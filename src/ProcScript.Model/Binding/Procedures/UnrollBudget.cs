using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Rules.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Procedures;

/// <summary>Stops a procedure that unrolls into more than anybody could follow, and that would take all memory.</summary>
internal sealed class UnrollBudget(string procedure, FindingSink sink)
{
    /// <summary>The most lines of a procedure, unrolled.</summary>
    internal const int MostLines = 20_000;

    private int _lines;

    /// <summary>Counts a line. False once there are too many; the first one too many is a finding.</summary>
    public bool Spend(BindingPlace place, SyntaxNode node)
    {
        if (_lines++ == MostLines)
        {
            sink.Report(TooMuchToUnroll.Lines(procedure, MostLines, place.At(node.Span)), place);
        }

        return _lines <= MostLines;
    }

    /// <summary>The places of an <c>each</c>'s body while there is budget.</summary>
    public IEnumerable<BindingPlace> Turns(EachSyntax each, BindingPlace place) =>
        Unrolling.Each(each, place, sink).TakeWhile(turn => Spend(turn, each));
}
