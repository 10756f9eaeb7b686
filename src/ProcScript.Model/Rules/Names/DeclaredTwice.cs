using ProcScript.Model.Binding.Places;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Names;

/// <summary>Two declarations of one name within sight of each other.</summary>
public sealed class DeclaredTwice : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1102", "name-declared-twice", "A name that is declared twice", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "Two declarations that one file sees, or two items of one machine, have the same name.",
        Why: "A step that names it could mean either, and two people would take off two different things.",
        Wrong: """
            clip pin "push pin"
            machine cab "cab" {
              part trim "left trim" { held by 2 pin as left_pins }
              part trim "right trim" { held by 2 pin as right_pins }
            }
            """,
        Right: """
            clip pin "push pin"
            machine cab "cab" {
              part trim[left] "left trim" { held by 2 pin as left_pins }
              part trim[right] "right trim" { held by 2 pin as right_pins }
            }
            """);

    /// <summary>Of a declaration at the top of a file, or an option.</summary>
    internal static Finding At(string name, string sort, SourceSpan later, SourceSpan earlier, SourceSpan? meeting) =>
        new(Id, $"`{name}` is declared twice", later, $"{sort} of the same name")
        {
            Related = meeting is { } line
                ? [new LabeledSpan(earlier, "declared here first"), new LabeledSpan(line, "this line brings the two together")]
                : [new LabeledSpan(earlier, "declared here first")],
            Help = "give one of them another name",
        };

    /// <summary>Of an item of a machine.</summary>
    internal static Finding Item(string name, string sort, ReferenceSyntax reference, BindingPlace place, SourceSpan earlier)
    {
        var later = place.At(reference.Span);
        if (later != earlier)
        {
            return At(name, sort, later, earlier, null);
        }

        // The same line, once for every value of an `each`: an index tells them apart.
        var variable = place.Bindings.Variables
            .Select(one => one.Variable)
            .FirstOrDefault(one => !reference.Indices.Any(index => index.Text == one), "");
        var end = later with { Span = new TextSpan(later.Span.End, 0) };
        return new Finding(Id, $"`{name}` is declared once for every value of `{variable}`", later, "the same name each time")
        {
            Help = $"give it an index: `{reference.Name.Text}[{variable}]`",
            Fixes = reference.Indices.IsEmpty
                ? [new Fix($"Add the index `[{variable}]`", FixGrade.NeedsLook, [new TextEdit(end, $"[{variable}]")])]
                : [],
        };
    }

    /// <summary>Of a variable.</summary>
    internal static Finding Variable(string name, SourceSpan later, SourceSpan earlier) =>
        new(Id, $"the variable `{name}` is declared twice", later, "hides the one around it")
        {
            Related = [new LabeledSpan(earlier, "declared here first")],
            Help = "give one of them another name",
        };

    /// <summary>Of a value in a list, or a position of a control.</summary>
    internal static Finding Value(string value, SourceSpan later) =>
        new(Id, $"`{value}` stands twice in one list", later, "the second time") { Help = "leave it out" };
}
