using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Text;

namespace ProcScript.Mutation.Making;

/// <summary>A body, or an initialiser, that is written out once for each of its mutants.</summary>
/// <param name="Root">The code that is changed.</param>
/// <param name="Span">What is written anew in the file: the body with its arrow and semicolon.</param>
/// <param name="Sort">How it is written.</param>
/// <param name="Type">What it returns; null where it returns nothing.</param>
internal sealed record CodeUnit(SyntaxNode Root, TextSpan Span, UnitSort Sort, ITypeSymbol? Type)
{
    /// <summary>Whether it returns one value after another.</summary>
    public bool IsIterator { get; } = Root.DescendantNodes(node => node is not (LocalFunctionStatementSyntax or AnonymousFunctionExpressionSyntax)).OfType<YieldStatementSyntax>().Any();

    /// <summary>All of a file, in its order.</summary>
    public static IEnumerable<CodeUnit> Of(SyntaxNode file, SemanticModel model)
    {
        foreach (var node in file.DescendantNodes(node => Find(node, model) is null))
        {
            if (Find(node, model) is { } unit)
            {
                yield return unit;
            }
        }
    }

    private static CodeUnit? Find(SyntaxNode node, SemanticModel model) => node switch
    {
        BaseMethodDeclarationSyntax { Body: { } body } method => new(body, body.Span, UnitSort.Block, Returned(model.GetDeclaredSymbol(method))),
        BaseMethodDeclarationSyntax { ExpressionBody.Expression: { } body } method when body is not (ThrowExpressionSyntax or RefExpressionSyntax) =>
            new(body, TextSpan.FromBounds(method.ExpressionBody!.SpanStart, method.SemicolonToken.Span.End), UnitSort.Body, Returned(model.GetDeclaredSymbol(method))),
        AccessorDeclarationSyntax { Body: { } body } accessor => new(body, body.Span, UnitSort.Block, Returned(model.GetDeclaredSymbol(accessor))),
        AccessorDeclarationSyntax { ExpressionBody.Expression: { } body } accessor when body is not ThrowExpressionSyntax =>
            new(body, TextSpan.FromBounds(accessor.ExpressionBody!.SpanStart, accessor.SemicolonToken.Span.End), UnitSort.Body, Returned(model.GetDeclaredSymbol(accessor))),
        PropertyDeclarationSyntax { ExpressionBody.Expression: { } body } property when body is not (ThrowExpressionSyntax or RefExpressionSyntax) =>
            new(body, TextSpan.FromBounds(property.ExpressionBody!.SpanStart, property.SemicolonToken.Span.End), UnitSort.Getter, model.GetDeclaredSymbol(property)!.Type),
        IndexerDeclarationSyntax { ExpressionBody.Expression: { } body } indexer when body is not (ThrowExpressionSyntax or RefExpressionSyntax) =>
            new(body, TextSpan.FromBounds(indexer.ExpressionBody!.SpanStart, indexer.SemicolonToken.Span.End), UnitSort.Getter, model.GetDeclaredSymbol(indexer)!.Type),
        // Within an initialiser: what a lambda comes to, a list, or a value that is assigned.
        LambdaExpressionSyntax { ExpressionBody: { } body } when body is not (ThrowExpressionSyntax or AssignmentExpressionSyntax) => new(body, body.Span, UnitSort.Initialiser, null),
        CollectionExpressionSyntax list when IsFlat(list) => new(list, list.Span, UnitSort.Initialiser, null),
        AssignmentExpressionSyntax { Parent: InitializerExpressionSyntax, Right: LiteralExpressionSyntax value } => new(value, value.Span, UnitSort.Initialiser, null),
        _ => null,
    };

    private static bool IsFlat(CollectionExpressionSyntax list) => !list.DescendantNodes().Any(node => node is InitializerExpressionSyntax or LambdaExpressionSyntax or BaseObjectCreationExpressionSyntax);

    private static ITypeSymbol? Returned(IMethodSymbol? method) => method is null or { ReturnsVoid: true } or { MethodKind: MethodKind.Constructor or MethodKind.StaticConstructor } ? null : method.ReturnType;
}

/// <summary>How a unit stands in its file.</summary>
internal enum UnitSort
{
    /// <summary>Statements in braces.</summary>
    Block,

    /// <summary>An expression behind an arrow.</summary>
    Body,

    /// <summary>An expression behind an arrow that is all of a property.</summary>
    Getter,

    /// <summary>An expression outside any body.</summary>
    Initialiser,
}
