using System.Collections.Immutable;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Rules.Wording;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Names;

/// <summary>A variable that no <c>each</c> and no parameter declares.</summary>
public sealed class UnknownVariable : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id =
        new("PRC1109", "unknown-variable", "A variable that nothing declares", Severity.Error) { Fix = FixAvailability.Sometimes };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A placeholder in a text, or a `when … is`, names a variable that no `each` around it and no parameter declares.",
        Why: "The card would show the bare placeholder where a technician looks for the side or the number.",
        Wrong: """
            clip pin "push pin"
            machine cab "cab" {
              each side in left, right {
                part trim[side] "{sid} trim" { held by 2 pin as trim_pins[side] }
              }
            }
            """,
        Right: """
            clip pin "push pin"
            machine cab "cab" {
              each side in left, right {
                part trim[side] "{side} trim" { held by 2 pin as trim_pins[side] }
              }
            }
            """);

    /// <summary>Of a placeholder.</summary>
    internal static Finding InText(string name, Bindings bindings, ImmutableArray<string> near, SourceSpan place) =>
        At(name, bindings, near, place) with { Fixes = DidYouMean.Fixes([.. near.Select(one => $"{{{one}}}")], place) };

    /// <summary>Of a <c>when</c>.</summary>
    internal static Finding InTest(string name, Bindings bindings, ImmutableArray<string> near, SourceSpan place) =>
        At(name, bindings, near, place) with { Fixes = DidYouMean.Fixes(near, place) };

    /// <summary>Of a brace that opens no placeholder.</summary>
    internal static Finding Brace(SourceSpan place) =>
        new(Id, "a brace in a text opens a placeholder, and this one names no variable", place, "no name and closing brace follow")
        {
            Help = "write `{{` for a brace",
            Fixes = [new Fix("Write `{{`", FixGrade.NeedsLook, place.Span.Length == 1 ? [new TextEdit(place, "{{")] : [])],
        };

    private static Finding At(string name, Bindings bindings, ImmutableArray<string> near, SourceSpan place) =>
        new(Id, $"no variable is called `{name}` here", place, "neither an `each` around it nor a parameter")
        {
            Related = [.. bindings.Variables.Select(one => new LabeledSpan(one.Declared, $"`{one.Variable}` is declared here"))],
            Help = near.IsEmpty ? Known(bindings) : DidYouMean.Help(near),
        };

    private static string Known(Bindings bindings) => bindings.Variables.Count() switch
    {
        0 => "there are no variables here",
        1 => $"the only variable here is `{bindings.Variable}`",
        _ => $"the variables here are {WordList.And(bindings.Variables.Select(one => $"`{one.Variable}`"))}",
    };
}
