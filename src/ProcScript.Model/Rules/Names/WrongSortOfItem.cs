using ProcScript.Model.Binding.Places;
using ProcScript.Model.Machines;
using ProcScript.Model.Rules.Wording;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Names;

/// <summary>A name that is known and of the wrong sort.</summary>
public sealed class WrongSortOfItem : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1103", "wrong-sort-of-item", "A name of the wrong sort", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "The name is declared, and stands for something that cannot stand here: only a part hides, only an energy is switched off, "
            + "only a tool drives a bolt.",
        Why: "The sentence makes no sense at the machine, so nothing can be derived from it.",
        Wrong: """
            clip pin "push pin"
            machine cab "cab" {
              part trim "trim" { held by 2 pin as trim_pins }
              part lamp "lamp" { behind trim_pins  held by 1 pin as lamp_pin }
            }
            """,
        Right: """
            clip pin "push pin"
            machine cab "cab" {
              part trim "trim" { held by 2 pin as trim_pins }
              part lamp "lamp" { behind trim  held by 1 pin as lamp_pin }
            }
            """);

    /// <summary>A name that stands for something else than the place asks for.</summary>
    internal static Finding At(string name, string sort, string wanted, SourceSpan place, SourceSpan declared) =>
        new(Id, $"`{name}` is {sort}, not {wanted}", place, $"{wanted} stands here")
        {
            Related = [new LabeledSpan(declared, $"declared as {sort} here")],
        };

    /// <summary>A place where something stands that is taken off, switched or waited for.</summary>
    internal static Finding Place(Workplace area, SourceSpan place) =>
        new(Id, $"`{area.Name}` is a place, and nothing is done to a place", place, "a part, a joint or another item stands here")
        {
            Related = [new LabeledSpan(area.Declared, "declared as a place here")],
            Help = $"name the item, and write `in {area.Name}` in its block",
        };

    /// <summary>A variable where an option stands.</summary>
    internal static Finding VariableAsOption(Bindings variable, bool isNegated, SourceSpan test)
    {
        var first = variable.Domain.IsEmpty ? variable.Value : variable.Domain[0];
        return new Finding(Id, $"`{variable.Variable}` is a variable, not an option", test, "which value is meant is not said")
        {
            Related = [new LabeledSpan(variable.Declared, $"it is {WordList.OrSome(variable.Domain)}")],
            Help = $"name a value: `when {variable.Variable} is {(isNegated ? "not " : "")}{first}`",
        };
    }

    /// <summary>An option where a variable stands.</summary>
    internal static Finding OptionAsVariable(string name, SourceSpan test) =>
        new(Id, $"`{name}` is an option, not a variable", test, "an option is on or off")
        {
            Help = $"write `when {name}` or `when not {name}`",
            Fixes = [new Fix($"Write `{name}`", FixGrade.NeedsLook, [new TextEdit(test, name)])],
        };

    /// <summary>A number of pieces of something that is no joint.</summary>
    internal static Finding Counted(MachineItem target, string sort, SourceSpan amount, SourceSpan declared) =>
        new(Id, $"the {target.Title} is {sort}, so there is only one", amount, "only the pieces of a joint are counted")
        {
            Related = [new LabeledSpan(declared, $"declared as {sort} here")],
        };

    /// <summary>A position of something that is no control.</summary>
    internal static Finding Positioned(MachineItem target, string sort, SourceSpan position, SourceSpan declared) =>
        new(Id, $"the {target.Title} is {sort}, which has no positions", position, "only a control goes `to` a position")
        {
            Related = [new LabeledSpan(declared, $"declared as {sort} here")],
        };
}
