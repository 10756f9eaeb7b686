using System.Collections.Immutable;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Binding.Procedures;

/// <summary>The procedure whose text is being walked, and the calls that led there.</summary>
/// <param name="Outline">The procedure.</param>
/// <param name="Calls">The <c>do</c> lines, outermost first.</param>
/// <param name="Caller">The frame that called; null for the procedure that is being made.</param>
internal sealed record CallFrame(ProcedureOutline Outline, ImmutableArray<SourceSpan> Calls, CallFrame? Caller)
{
    /// <summary>The <c>where needed</c> of the outermost call that has one; null where none has.</summary>
    public WhereNeeded? WhereNeeded { get; init; }

    /// <summary>Whether the text is another procedure's.</summary>
    public bool IsCalled => Caller is not null;

    /// <summary>Whether the procedure is being walked already.</summary>
    public bool Contains(ProcedureOutline outline)
    {
        for (var frame = this; frame is not null; frame = frame.Caller)
        {
            if (frame.Outline == outline)
            {
                return true;
            }
        }

        return false;
    }
}
