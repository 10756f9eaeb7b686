using System.Collections.Immutable;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Rules.Wording;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Names;

/// <summary>A <c>when</c> that asks for a value which the variable never has.</summary>
public sealed class ValueNeverTaken : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id =
        new("PRC1119", "value-never-taken", "A value that the variable never has", Severity.Error) { Fix = FixAvailability.Sometimes };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A `when` compares a variable with a value that is not among those the variable goes through.",
        Why: "The body would never count, or always, and what was meant for one side would silently be missing there.",
        Wrong: """
            clip pin "push pin"
            machine cab "cab" {
              each side in left, right {
                part trim[side] "{side} trim" {
                  held by 2 pin as trim_pins[side]
                  when side is lft { held by 1 pin as grab_pin }
                }
              }
            }
            """,
        Right: """
            clip pin "push pin"
            machine cab "cab" {
              each side in left, right {
                part trim[side] "{side} trim" {
                  held by 2 pin as trim_pins[side]
                  when side is left { held by 1 pin as grab_pin }
                }
              }
            }
            """);

    internal static Finding At(Bindings variable, string value, ImmutableArray<string> near, SourceSpan place) =>
        new(Id, $"`{variable.Variable}` is never `{value}`", place, "not among its values")
        {
            Related = [new LabeledSpan(variable.Declared, $"it is {WordList.OrSome(variable.Domain)}")],
            Help = DidYouMean.Help(near),
            Fixes = DidYouMean.Fixes(near, place),
        };
}
