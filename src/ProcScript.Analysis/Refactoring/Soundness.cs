using ProcScript.Analysis.Completion;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Refactoring;

/// <summary>Tells whether a procedure that is proven is so after an edit, with all that calls it.</summary>
/// <param name="report">The report before the edit.</param>
/// <param name="steps">Steps of the procedure.</param>
/// <param name="cancellation">Ends the work.</param>
internal sealed class Soundness(LibraryReport report, SelectedSteps steps, CancellationToken cancellation)
{
    private readonly ProcedureReport[] _own =
        [.. report.Procedures.Where(one => one.Procedure.IsOf(steps.Tree.Text.Path, steps.Procedure))];

    private SecondCheck? _check;

    /// <summary>Whether the procedure is proven in every variant.</summary>
    public bool IsProven => _own.Length > 0 && Array.TrueForAll(_own, one => one.IsProven);

    /// <summary>Whether the file's text after an edit is as good as before; of a procedure that is not proven nobody can tell.</summary>
    public bool Keeps(string edited) =>
        !IsProven || (_check ??= new SecondCheck(report, [.. _own], steps.Procedure, cancellation)).Judge(edited) == FixGrade.Safe;

    /// <summary>Whether a refactoring leaves the procedure as good as it was.</summary>
    public bool Keeps(Refactoring change) => Keeps(TextEdits.Apply(steps.Tree.Text.Content, change.Edits));
}
