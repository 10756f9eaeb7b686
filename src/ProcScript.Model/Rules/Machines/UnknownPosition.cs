using System.Collections.Immutable;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Machines;
using ProcScript.Model.Rules.Wording;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Rules.Machines;

/// <summary>A position that the control does not have.</summary>
public sealed class UnknownPosition : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id =
        new("PRC2007", "unknown-position", "A position that the control does not have", Severity.Error) { Fix = FixAvailability.Sometimes };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A `set` or a condition names a position that the control does not list.",
        Why: "Nobody can set it, and the condition never holds.",
        Wrong: """
            clip pin "push pin"
            machine cab "cab" {
              control column "steering column" { up, down }
              part trim "trim" { needs column at dwn  held by 2 pin as trim_pins }
            }
            """,
        Right: """
            clip pin "push pin"
            machine cab "cab" {
              control column "steering column" { up, down }
              part trim "trim" { needs column at down  held by 2 pin as trim_pins }
            }
            """);

    internal static Finding At(Control control, string position, ImmutableArray<string> near, WordSyntax word, BindingPlace place) =>
        new(Id, $"the {control.Title} has no position `{position}`", place.At(word.Span))
        {
            Related = [new LabeledSpan(control.Declared, $"its positions are {WordList.And(control.Positions)}")],
            Help = DidYouMean.Help(near),
            Fixes = ValueFixes.Of(word, near, place),
        };
}
