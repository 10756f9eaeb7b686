using System.Collections.Immutable;
using ProcScript.Model.Machines;
using ProcScript.Model.Rules.Wording;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Machines;

/// <summary>A word for a hazard that the language does not know.</summary>
public sealed class UnknownHazard : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id =
        new("PRC2013", "unknown-hazard", "A hazard that is not known", Severity.Error) { Fix = FixAvailability.Sometimes };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "`hazard` names a word that stands for no hazard. The words are " + WordList.And(HazardWords.All.Select(word => $"`{word}`")) + ".",
        Why: "The mark brings the cautions and the checks for that hazard. A word that nobody knows would bring none, and nobody would notice.",
        Wrong: """
            clip pin "push pin"
            machine cab "cab" {
              part strut "gas strut" { hazard sprung  held by 2 pin as strut_pins }
            }
            """,
        Right: """
            clip pin "push pin"
            machine cab "cab" {
              part strut "gas strut" { hazard spring  held by 2 pin as strut_pins }
            }
            """);

    internal static Finding At(string word, ImmutableArray<string> near, SourceSpan place) =>
        new(Id, $"no hazard is called `{word}`", place)
        {
            Help = near.IsEmpty ? $"it is one of {WordList.OrNames(HazardWords.All)}; anything else belongs in a `warning`" : DidYouMean.Help(near),
            Fixes = DidYouMean.Fixes(near, place),
        };
}
