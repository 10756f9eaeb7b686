using ProcScript.Syntax.Text;

namespace ProcScript.Model.Procedures;

/// <summary>
/// A <c>where needed</c>: what is done already when it comes to its steps is left out. Each call has one of its own, also of those that one line makes in
/// a loop.
/// </summary>
/// <param name="source">Where it is written.</param>
/// <param name="title">The title of the procedure that is called; null where a single step says it.</param>
public sealed class WhereNeeded(SourceSpan source, string? title)
{
    /// <summary>The call or the step that says it.</summary>
    public SourceSpan Source => source;

    /// <summary>The title of the procedure that is called; null where a single step says it.</summary>
    public string? Title => title;
}
