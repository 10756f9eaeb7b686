using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Nodes;

/// <summary>A quantity: <c>22 ± 2 N.m</c>, <c>0.5 .. 2.0 L/min</c>, <c>3/8 in</c>.</summary>
/// <param name="Span">From the first to the last word.</param>
/// <param name="First">The value, or the lower end.</param>
/// <param name="FirstUnit">The unit right behind it.</param>
/// <param name="Form">What the second number is.</param>
/// <param name="Second">The tolerance, or the upper end.</param>
/// <param name="SecondUnit">The unit right behind the second number.</param>
public sealed record QuantitySyntax(
    TextSpan Span,
    NumberSyntax First,
    UnitSyntax? FirstUnit,
    QuantityForm Form,
    NumberSyntax? Second,
    UnitSyntax? SecondUnit) : SyntaxNode(Span)
{
    /// <inheritdoc/>
    private protected override IEnumerable<SyntaxNode> Parts => Present(First, FirstUnit, Second, SecondUnit);
}
