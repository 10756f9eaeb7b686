using System.Collections.Immutable;
using ProcScript.Analysis.Tools;
using ProcScript.Model;
using ProcScript.Model.Catalog;
using ProcScript.Model.Procedures;
using ProcScript.Syntax;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Reading;

/// <summary>
/// One thing that the check of a procedure asks of the library, beside the procedure and its machine. Equal questions have equal answers, and
/// where the answer is the same as before, so is all that was made of it.
/// </summary>
internal abstract record LibraryQuestion
{
    /// <summary>What a library answers. It must keep no library alive.</summary>
    public abstract object? Answer(Library library);

    /// <summary>Whether two answers come to the same.</summary>
    public virtual bool AreSame(object? one, object? other) => Equals(one, other);
}

/// <summary>The torque wrenches among the tools of some files.</summary>
/// <param name="Files">The files, in ordinal order.</param>
internal sealed record WrenchesQuestion(ImmutableArray<string> Files) : LibraryQuestion
{
    /// <inheritdoc/>
    public override object Answer(Library library) => TorqueWrenches.In(Files, library).All;

    /// <inheritdoc/>
    public override bool AreSame(object? one, object? other) => ToolAnswers.AreSame(one, other);
}

/// <summary>The crowfoots among the tools of some files.</summary>
/// <param name="Files">The files, in ordinal order.</param>
internal sealed record CrowfootsQuestion(ImmutableArray<string> Files) : LibraryQuestion
{
    /// <inheritdoc/>
    public override object Answer(Library library) => Crowfoots.In(Files, library).All;

    /// <inheritdoc/>
    public override bool AreSame(object? one, object? other) => ToolAnswers.AreSame(one, other);
}

/// <summary>What the procedures of some files say of actions.</summary>
/// <param name="Files">The files, in ordinal order.</param>
internal sealed record GivenQuestion(ImmutableArray<string> Files) : LibraryQuestion
{
    /// <inheritdoc/>
    public override object Answer(Library library) => library.Given(Files);

    /// <inheritdoc/>
    public override bool AreSame(object? one, object? other) => ((GivenDetails)one!).IsSame((GivenDetails)other!);
}

/// <summary>The text of the declaration at a place, and the line of the place.</summary>
/// <param name="Place">The place.</param>
internal sealed record TextQuestion(SourceSpan Place) : LibraryQuestion
{
    /// <inheritdoc/>
    public override object? Answer(Library library) => library.Trees.TryGetValue(Place.Path, out var tree)
        ? new TextAnswer(DeclarationAt(tree, Place.Span.Start), tree.Text.LineAt(Place.Span.Start))
        : null;

    private static DeclarationSyntax? DeclarationAt(SyntaxTree tree, int offset)
    {
        var declarations = tree.Root.Declarations;
        var (low, high) = (0, declarations.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = declarations[middle].Span.End < offset ? (middle + 1, high) : (low, middle);
        }

        return low < declarations.Length && declarations[low].Span.Start <= offset ? declarations[low] : null;
    }
}

/// <summary>What stands at a place.</summary>
/// <param name="Declaration">The declaration there: the same object for as long as no letter of it changes.</param>
/// <param name="Line">The line, counted from 0.</param>
internal sealed record TextAnswer(DeclarationSyntax? Declaration, int Line)
{
    /// <summary>Nodes are the same where they are the same object.</summary>
    public bool Equals(TextAnswer? other) => other is not null && ReferenceEquals(Declaration, other.Declaration) && Line == other.Line;

    /// <inheritdoc/>
    public override int GetHashCode() => Line;
}

/// <summary>Compares answers that are tools.</summary>
internal static class ToolAnswers
{
    /// <summary>Whether they are the same tools in the same order.</summary>
    public static bool AreSame(object? one, object? other) => ((ImmutableArray<Tool>)one!).AsSpan().SequenceEqual(((ImmutableArray<Tool>)other!).AsSpan());
}
