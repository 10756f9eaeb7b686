using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Text;

namespace ProcScript.Mutation.Making;

/// <summary>What may be changed in a unit: each mistake one that a programmer makes, and no two the same.</summary>
/// <param name="model">Tells the types.</param>
internal sealed class Changes(SemanticModel model)
{
    private static readonly Dictionary<SyntaxKind, string> Operators = new()
    {
        [SyntaxKind.LogicalAndExpression] = "||",
        [SyntaxKind.LogicalOrExpression] = "&&",
        [SyntaxKind.EqualsExpression] = "!=",
        [SyntaxKind.NotEqualsExpression] = "==",
        [SyntaxKind.LessThanExpression] = "<=",
        [SyntaxKind.LessThanOrEqualExpression] = "<",
        [SyntaxKind.GreaterThanExpression] = ">=",
        [SyntaxKind.GreaterThanOrEqualExpression] = ">",
        [SyntaxKind.AddExpression] = "-",
        [SyntaxKind.SubtractExpression] = "+",
        [SyntaxKind.MultiplyExpression] = "/",
        [SyntaxKind.DivideExpression] = "*",
        [SyntaxKind.ModuloExpression] = "*",
        [SyntaxKind.AddAssignmentExpression] = "-=",
        [SyntaxKind.SubtractAssignmentExpression] = "+=",
    };

    private static readonly Dictionary<string, string> Calls = new()
    {
        ["Any"] = "All",
        ["All"] = "Any",
        ["First"] = "Last",
        ["Last"] = "First",
        ["FirstOrDefault"] = "LastOrDefault",
        ["LastOrDefault"] = "FirstOrDefault",
        ["Min"] = "Max",
        ["Max"] = "Min",
        ["MinBy"] = "MaxBy",
        ["MaxBy"] = "MinBy",
        ["Take"] = "Skip",
        ["Skip"] = "Take",
        ["OrderBy"] = "OrderByDescending",
        ["OrderByDescending"] = "OrderBy",
        ["Union"] = "Intersect",
        ["Intersect"] = "Union",
        ["UnionWith"] = "ExceptWith",
        ["ExceptWith"] = "IntersectWith",
    };

    /// <summary>Calls that a list goes through: without one it stays as it is.</summary>
    private static readonly HashSet<string> Passing = ["Where", "Except", "Concat", "Distinct", "Reverse", "TakeWhile", "SkipWhile", "SkipLast", "Append", "Prepend", "OrderBy"];

    /// <summary>The changes of a unit.</summary>
    public IEnumerable<(TextSpan Span, string After)> Of(CodeUnit unit)
    {
        if (Hollow(unit) is { } hollow && !(unit.Root is ExpressionSyntax value && model.GetConstantValue(value) is { HasValue: true, Value: 0 or true or false }))
        {
            foreach (var text in hollow)
            {
                yield return (unit.Root.Span, text);
            }
        }

        foreach (var node in unit.Root.DescendantNodesAndSelf())
        {
            foreach (var change in Of(node))
            {
                if (change.After != node.SyntaxTree.GetText().ToString(change.Span))
                {
                    yield return change;
                }
            }
        }
    }

    /// <summary>What a unit returns that has done nothing.</summary>
    private static IEnumerable<string>? Hollow(CodeUnit unit) => (unit.Sort, unit.Type) switch
    {
        (UnitSort.Initialiser, _) => null,
        (UnitSort.Block, null) => ["{ }"],
        (UnitSort.Body, null) => ["System.GC.KeepAlive(null)"],
        (UnitSort.Block, _) when unit.IsIterator => ["{ yield break; }"],
        (var sort, { SpecialType: SpecialType.System_Boolean }) => sort == UnitSort.Block ? ["{ return true; }", "{ return false; }"] : ["true", "false"],
        (var sort, { SpecialType: SpecialType.System_Int32 }) => sort == UnitSort.Block ? ["{ return 0; }"] : ["0"],
        (var sort, INamedTypeSymbol { IsGenericType: true, TypeArguments.Length: 1 }) => sort == UnitSort.Block ? ["{ return []; }"] : ["[]"],
        (var sort, { NullableAnnotation: NullableAnnotation.Annotated }) => sort == UnitSort.Block ? ["{ return null; }"] : ["null"],
        _ => null,
    };

    private IEnumerable<(TextSpan Span, string After)> Of(SyntaxNode node) => node switch
    {
        BinaryExpressionSyntax binary => OfBinary(binary),
        AssignmentExpressionSyntax assignment when Operators.TryGetValue(assignment.Kind(), out var other) => [(assignment.OperatorToken.Span, other)],
        PrefixUnaryExpressionSyntax { RawKind: (int)SyntaxKind.LogicalNotExpression } negation => [(negation.Span, $"({negation.Operand})")],
        PostfixUnaryExpressionSyntax { RawKind: (int)SyntaxKind.PostIncrementExpression } step => [(step.OperatorToken.Span, "--")],
        PostfixUnaryExpressionSyntax { RawKind: (int)SyntaxKind.PostDecrementExpression } step => [(step.OperatorToken.Span, "++")],
        IfStatementSyntax choice => [Negated(choice.Condition)],
        WhileStatementSyntax loop => [(loop.Condition.Span, "false")],
        ConditionalExpressionSyntax choice => [Negated(choice.Condition)],
        WhenClauseSyntax clause => [Negated(clause.Condition), (clause.Span, "")],
        LiteralExpressionSyntax literal => OfLiteral(literal),
        UnaryPatternSyntax pattern => [(pattern.Span, $"({pattern.Pattern})")],
        BinaryPatternSyntax pattern => [(pattern.OperatorToken.Span, pattern.IsKind(SyntaxKind.OrPattern) ? "and" : "or")],
        IsPatternExpressionSyntax { Pattern: not UnaryPatternSyntax } test => [(test.Span, $"!({test})")],
        InvocationExpressionSyntax { Expression: MemberAccessExpressionSyntax call } invocation => OfCall(invocation, call),
        LambdaExpressionSyntax { ExpressionBody: { } body } when IsBoolean(body) && body is not (BinaryExpressionSyntax or PrefixUnaryExpressionSyntax or IsPatternExpressionSyntax) => [Negated(body)],
        ArrowExpressionClauseSyntax or ReturnStatementSyntax { Expression: null } => [],
        ReturnStatementSyntax { Expression: { } value } when IsBoolean(value) && value is not (BinaryExpressionSyntax or PrefixUnaryExpressionSyntax or IsPatternExpressionSyntax or LiteralExpressionSyntax) => [Negated(value)],
        ExpressionStatementSyntax or ContinueStatementSyntax or YieldStatementSyntax { Expression: not null } => [(node.Span, ";")],
        CollectionExpressionSyntax { Elements.Count: > 0 } list => list.Elements.Select(element => (list.Span, $"[{string.Join(", ", list.Elements.Where(other => other != element))}]")),
        SwitchExpressionArmSyntax { Parent: SwitchExpressionSyntax { Arms.Count: > 2 } } arm when arm.Pattern is not DiscardPatternSyntax => [(WithComma(arm), "")],
        _ => [],
    };

    private static TextSpan WithComma(SwitchExpressionArmSyntax arm) => arm.GetLastToken().GetNextToken() is var next && next.IsKind(SyntaxKind.CommaToken) ? TextSpan.FromBounds(arm.SpanStart, next.Span.End) : arm.Span;

    private IEnumerable<(TextSpan Span, string After)> OfBinary(BinaryExpressionSyntax binary)
    {
        if (binary.IsKind(SyntaxKind.CoalesceExpression))
        {
            yield return (binary.Span, $"({binary.Right})");
        }
        else if (Operators.TryGetValue(binary.Kind(), out var other) && model.GetTypeInfo(binary).Type?.SpecialType != SpecialType.System_String)
        {
            yield return (binary.OperatorToken.Span, other);
            if (binary.Kind() is SyntaxKind.LogicalAndExpression or SyntaxKind.LogicalOrExpression)
            {
                yield return (binary.Span, $"({binary.Left})");
                yield return (binary.Span, $"({binary.Right})");
            }
            else if (binary.Kind() is SyntaxKind.LessThanExpression or SyntaxKind.LessThanOrEqualExpression or SyntaxKind.GreaterThanExpression or SyntaxKind.GreaterThanOrEqualExpression)
            {
                yield return (binary.Span, $"!({binary})");
            }
        }
    }

    private static IEnumerable<(TextSpan Span, string After)> OfLiteral(LiteralExpressionSyntax literal) => literal.Kind() switch
    {
        SyntaxKind.TrueLiteralExpression => [(literal.Span, "false")],
        SyntaxKind.FalseLiteralExpression => [(literal.Span, "true")],
        SyntaxKind.NumericLiteralExpression when literal.Token.Value is int number => [(literal.Span, number == 0 ? "1" : "0")],
        _ => [],
    };

    private static IEnumerable<(TextSpan Span, string After)> OfCall(InvocationExpressionSyntax invocation, MemberAccessExpressionSyntax call)
    {
        var name = call.Name.Identifier.Text;
        if (Calls.TryGetValue(name, out var other))
        {
            yield return (call.Name.Identifier.Span, other);
        }

        if (Passing.Contains(name))
        {
            yield return (invocation.Span, call.Expression.ToString());
        }
    }

    private static (TextSpan Span, string After) Negated(ExpressionSyntax condition) => (condition.Span, $"!({condition})");

    private bool IsBoolean(ExpressionSyntax expression) => model.GetTypeInfo(expression).Type?.SpecialType == SpecialType.System_Boolean;
}
