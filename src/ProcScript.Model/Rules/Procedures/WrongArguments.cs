using System.Collections.Immutable;
using System.Globalization;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Binding.Procedures;
using ProcScript.Model.Rules.Wording;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Procedures;

/// <summary>A <c>do</c> with arguments that the procedure does not take.</summary>
public sealed class WrongArguments : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id =
        new("PRC1114", "wrong-arguments", "Arguments that the procedure does not take", Severity.Error) { Fix = FixAvailability.Sometimes };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A `do` gives too few or too many arguments, or a value that the parameter does not list.",
        Why: "A procedure is checked for the values that it lists and for no others.",
        Wrong: """
            clip pin "push pin"
            machine cab "cab" {
              each side in left, right {
                part trim[side] "{side} trim" { held by 2 pin as trim_pins[side] }
              }
            }
            procedure trim_out(side in left, right) "Take the {side} trim off" on cab {
              stage "Trim" { release trim_pins[side]  remove trim[side] }
            }
            procedure both_out "Take both trims off" on cab {
              do trim_out(left)
              do trim_out(rear)
            }
            """,
        Right: """
            clip pin "push pin"
            machine cab "cab" {
              each side in left, right {
                part trim[side] "{side} trim" { held by 2 pin as trim_pins[side] }
              }
            }
            procedure trim_out(side in left, right) "Take the {side} trim off" on cab {
              stage "Trim" { release trim_pins[side]  remove trim[side] }
            }
            procedure both_out "Take both trims off" on cab {
              do trim_out(left)
              do trim_out(right)
            }
            """);

    /// <summary>Of too few or too many.</summary>
    internal static Finding Number(ProcedureOutline target, int given, SourceSpan place)
    {
        var wanted = target.Parameters.Length;
        return new Finding(Id, $"`{target.Symbol.Name}` takes {Wanted(wanted)}, and {Given(given)} given", place)
        {
            Related = [new LabeledSpan(target.Symbol.Declared, "declared here")],
            Help = wanted == 0
                ? $"write `do {target.Symbol.Name}`"
                : $"write `do {target.Symbol.Name}({string.Join(", ", target.Parameters.Select(one => one.Name))})` with a value for each",
        };
    }

    /// <summary>Of a value.</summary>
    internal static Finding Value(
        ProcedureOutline target, Parameter parameter, string value, ImmutableArray<string> near, WordSyntax word, BindingPlace place) =>
        new(Id, $"`{parameter.Name}` of `{target.Symbol.Name}` cannot be `{value}`", place.At(word.Span), "not among its values")
        {
            Related = [new LabeledSpan(parameter.Declared, $"it is {WordList.OrSome(parameter.Domain)}")],
            Help = DidYouMean.Help(near),
            Fixes = ValueFixes.Of(word, near, place),
        };

    private static string Wanted(int count) => count switch
    {
        0 => "no arguments",
        1 => "1 argument",
        _ => $"{count.ToString(CultureInfo.InvariantCulture)} arguments",
    };

    private static string Given(int count) => count switch
    {
        0 => "none is",
        1 => "1 is",
        _ => $"{count.ToString(CultureInfo.InvariantCulture)} are",
    };
}
