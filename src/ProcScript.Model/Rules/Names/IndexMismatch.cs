using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Rules.Wording;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Names;

/// <summary>A name with an index that is not declared so.</summary>
public sealed class IndexMismatch : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1110", "index-mismatch", "An index that is not declared", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "The name is declared, with another index: none is written where one is needed, one where there is none, or a value that "
            + "does not occur.",
        Why: "Left or right, first or fourth: a step without the right index does not say which.",
        Wrong: """
            clip pin "push pin"
            machine cab "cab" {
              each side in left, right {
                part trim[side] "{side} trim" { held by 2 pin as trim_pins[side] }
              }
            }
            procedure trim_out "Take the left trim off" on cab {
              stage "Trim" { release trim_pins[left]  remove trim }
            }
            """,
        Right: """
            clip pin "push pin"
            machine cab "cab" {
              each side in left, right {
                part trim[side] "{side} trim" { held by 2 pin as trim_pins[side] }
              }
            }
            procedure trim_out "Take the left trim off" on cab {
              stage "Trim" { release trim_pins[left]  remove trim[left] }
            }
            """);

    /// <summary>Of an item of a machine.</summary>
    internal static Finding At(
        ReferenceSyntax reference, string name, ImmutableArray<string> family, BindingPlace place, SourceSpan declared, FindingSink sink)
    {
        var span = place.At(reference.Span);
        var bare = reference.Name.Text;
        var message = reference.Indices.IsEmpty
            ? $"`{bare}` does not say which"
            : family is [var only] && only == bare ? $"`{bare}` has no index, and `{name}` gives it one" : $"there is no `{name}`";
        ImmutableArray<string> near = family.Length == 1
            ? family
            : [.. new NearNames(Choices(reference, family, place)).Find(Inside(name), sink).Select(inside => $"{bare}[{inside}]")];
        return new Finding(Id, message, span, reference.Indices.IsEmpty ? "an index is missing" : "not declared with this index")
        {
            Related = [new LabeledSpan(declared, "declared here")],
            Help = near.IsEmpty ? $"there is {WordList.AndSome(family)}" : DidYouMean.Help(near),
            Fixes = DidYouMean.Fixes(near, span),
        };
    }

    /// <summary>What stands in the brackets of the family, and the variables that may stand there.</summary>
    private static IEnumerable<string> Choices(ReferenceSyntax reference, ImmutableArray<string> family, BindingPlace place) => family
        .Select(Inside)
        .Concat(place.Bindings.Variables.Select(one => one.Variable))
        .Where(inside => inside.Count(letter => letter == ',') == reference.Indices.Length - 1);

    private static string Inside(string name) => name[CanonicalName.Base(name).Length..].Trim('[', ']');

    /// <summary>Of a declaration at the top of a file, which has no index.</summary>
    internal static Finding OnSymbol(Symbol symbol, SourceSpan whole, SourceSpan bare) =>
        new(Id, $"`{symbol.Name}` is {symbol.Sort}, which has no index", whole, "only items of a machine have one")
        {
            Related = [new LabeledSpan(symbol.Declared, "declared here")],
            Fixes =
            [
                new Fix(
                    "Leave the index out",
                    FixGrade.Safe,
                    [new TextEdit(whole with { Span = TextSpan.FromBounds(bare.Span.End, whole.Span.End) }, "")]),
            ],
        };
}
