using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Rules.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Procedures;

/// <summary>Stops a procedure that unrolls into more than anybody could follow, and that would take all memory.</summary>
/// <param name="procedure">The procedure.</param>
/// <param name="times">How often it is unrolled: in every variant of its machine, with every choice of arguments.</param>
/// <param name="sink">Takes the finding.</param>
internal sealed class UnrollBudget(string procedure, int times, FindingSink sink)
{
    /// <summary>The most lines of a procedure, unrolled.</summary>
    private const int MostLines = 20_000;

    /// <summary>The most lines in all variants and choices: what takes some seconds, and a few hundred megabytes.</summary>
    private const int MostLinesInAll = 500_000;

    private readonly int _most = Math.Min(MostLines, MostLinesInAll / times);
    private int _lines;

    /// <summary>Counts a line. False once there are too many; the first one too many is a finding.</summary>
    public bool Spend(BindingPlace place, SyntaxNode node)
    {
        if (_lines++ == _most)
        {
            var line = place.At(node.Span);
            sink.Report(
                _most == MostLines ? TooMuchToUnroll.Lines(procedure, MostLines, line) : TooMuchToUnroll.LinesInAll(procedure, MostLinesInAll, times, line), place);
        }

        return _lines <= _most;
    }

    /// <summary>The places of an <c>each</c>'s body while there is budget.</summary>
    public IEnumerable<BindingPlace> Turns(EachSyntax each, BindingPlace place) =>
        Unrolling.Each(each, place, sink).TakeWhile(turn => Spend(turn, each));
}
