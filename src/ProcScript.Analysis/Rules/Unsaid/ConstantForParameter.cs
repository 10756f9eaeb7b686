using ProcScript.Analysis.Necessity;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Unsaid;

/// <summary>A procedure has a parameter, and a line of it names one of its values for good. Common practice, no source.</summary>
public sealed class ConstantForParameter : FamilyRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC8010", "constant-for-parameter", "A value where the procedure has a parameter for it", Severity.Hint)
    {
        Fix = FixAvailability.Always,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A procedure has a parameter, and a step, a goal or a rule of it names an item by a value of that parameter, outside of any `when` that "
            + "asks for the value, while no line does the same with the other values.",
        Why: "The pack for the right side then says *clean the left group*. Where the one is meant whatever the parameter is, allow it and say so.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" { each side in left, right { part flap[side] "{side} flap" { held by 2 pin as pins[side] } } }

            procedure flap_off(side in left, right) "Take the {side} flap off" on press {
              stage "Flap" {
                release pins[side]
                remove flap[side]
              }
              work { clean flap[left] }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" { each side in left, right { part flap[side] "{side} flap" { held by 2 pin as pins[side] } } }

            procedure flap_off(side in left, right) "Take the {side} flap off" on press {
              stage "Flap" {
                release pins[side]
                remove flap[side]
              }
              work { clean flap[side] }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(ProcedureFamily family)
    {
        var first = family.Own[0].Outcome;
        if (first.Procedure.Arguments.IsEmpty || first.Strip is not { } strip || strip.Library.Around(first.Procedure.Declared) is not { } tree)
        {
            return [];
        }

        var procedure = tree.Root.Declarations.OfType<ProcedureSyntax>().First(one => one.Name.Span == first.Procedure.Declared.Span);
        var named = procedure.Parameters.Select((_, index) => Values(index, family)).ToList();
        var uses = new List<(ReferenceSyntax Reference, int At)>();
        Collect(procedure.Items, procedure, [], uses);
        return
            from use in uses
            from parameter in procedure.Parameters.Index()
            let value = use.Reference.Indices[use.At].Text
            where named[parameter.Index].Contains(value)
                && !named[parameter.Index].All(other => uses.Any(one => IsSame(one.Reference, use.Reference, use.At, other)))
            select At(use.Reference, use.At, parameter.Item.Name.Text, tree.Text);
    }

    /// <summary>The values that a parameter takes in the variants of the procedure.</summary>
    private static HashSet<string> Values(int parameter, ProcedureFamily family) =>
        family.Own.Select(member => member.Outcome.Procedure.Arguments[parameter]).ToHashSet(StringComparer.Ordinal);

    /// <summary>Finds the names with a plain value in their index; a <c>when</c> that asks for a value has its own reason to name it.</summary>
    private static void Collect(IEnumerable<SyntaxNode> nodes, ProcedureSyntax procedure, HashSet<string> variables, List<(ReferenceSyntax, int)> uses)
    {
        foreach (var node in nodes)
        {
            switch (node)
            {
                case WhenSyntax { Test.Value: not null }:
                    break;
                case EachSyntax each:
                    Collect(each.Body, procedure, [.. variables, each.Variable.Text], uses);
                    break;
                case ReferenceSyntax reference:
                    uses.AddRange(reference.Indices.Index().Where(index => !IsVariable(index.Item.Text, procedure, variables)).Select(index => (reference, index.Index)));
                    break;
                default:
                    Collect(node.Children, procedure, variables, uses);
                    break;
            }
        }
    }

    private static bool IsVariable(string word, ProcedureSyntax procedure, HashSet<string> variables) =>
        variables.Contains(word) || procedure.Parameters.Any(parameter => parameter.Name.Text == word);

    /// <summary>Whether a name is another but for the value of one index.</summary>
    private static bool IsSame(ReferenceSyntax one, ReferenceSyntax other, int at, string value) =>
        one.Name.Text == other.Name.Text
        && one.Indices.Length == other.Indices.Length
        && one.Indices.Index().All(index => index.Item.Text == (index.Index == at ? value : other.Indices[index.Index].Text));

    private static Finding At(ReferenceSyntax reference, int at, string parameter, SourceText text)
    {
        var index = reference.Indices[at];
        return new Finding(
            Id,
            $"`{reference.Written}` is the same whatever `{parameter}` is",
            new SourceSpan(text.Path, reference.Span),
            $"`{index.Text}` is a value of `{parameter}`")
        {
            Help = $"write `{parameter}` for `{index.Text}`; where it is meant so, allow it and say why",
            Fixes = [new Fix($"Write `{parameter}`", FixGrade.NeedsLook, [new TextEdit(new SourceSpan(text.Path, index.Span), parameter)])],
        };
    }
}
