using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Machines;

/// <summary><c>on none</c> in a machine with something that is called <c>none</c>.</summary>
public sealed class AmbiguousNone : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC2015", "ambiguous-none", "The word `none` that could be a name", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A machine has an item of the name `none`, and `on none`, `carries none`, `in none` or `renew with none` stands in it.",
        Why: "It can mean that there is no energy, or the energy of that name. One of the two has to be isolated before the joint is opened.",
        Wrong: """
            connector plug_2 "2-way connector"

            machine lamp "lamp" {
              energy none "spare supply" { isolate "Pull the plug."  restore "Put the plug in." }
              part bulb "bulb" { wired by 1 plug_2 as bulb_plug { on none } }
            }
            """,
        Right: """
            connector plug_2 "2-way connector"

            machine lamp "lamp" {
              energy spare "spare supply" { isolate "Pull the plug."  restore "Put the plug in." }
              part bulb "bulb" { wired by 1 plug_2 as bulb_plug { on none } }
            }
            """);

    /// <summary>The finding at the word.</summary>
    internal static Finding At(string keyword, string sort, SourceSpan declared, SourceSpan place) =>
        new(Id, $"`{keyword} none` can mean that there is none, or `none`, which is {sort} of this machine", place, "which of the two?")
        {
            Related = [new LabeledSpan(declared, "declared here")],
            Help = "give the item another name",
        };
}
