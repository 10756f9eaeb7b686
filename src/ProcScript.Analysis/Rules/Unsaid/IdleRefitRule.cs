using ProcScript.Analysis.Necessity;
using ProcScript.Analysis.Refitting;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Unsaid;

/// <summary>A refit rule that asks for what has to be so without it. It follows from the derivation; no source.</summary>
public sealed class IdleRefitRule : FamilyRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC8012", "idle-refit-rule", "A refit rule that changes nothing", Severity.Hint)
    {
        Fix = FixAvailability.Always,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "An order rule asks for what follows without it, from the machine or from other rules, in every variant and for every procedure that calls "
            + "this one. A rule that only names the order in which things go back anyway is none: it holds when the steps change.",
        Why: "Either it is not needed, or it does not say what its author meant, and the two are the other way round.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
              part filter "filter" {
                behind guard
                held by 2 pin as filter_pins
              }
            }

            procedure filter_off "Take the filter off" on press {
              stage "Filter" {
                release guard_pins
                remove guard
                release filter_pins
                remove filter
              }
              refit { fit filter before fit guard }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
              part filter "filter" {
                behind guard
                held by 2 pin as filter_pins
              }
            }

            procedure filter_off "Take the filter off" on press {
              stage "Filter" {
                release guard_pins
                remove guard
                release filter_pins
                remove filter
              }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(ProcedureFamily family)
    {
        // A called procedure's rules come along; they are judged with that procedure.
        if (!family.Own.All(member => member.Outcome.IsProven) || !family.Own.Any(member => Rules(member).Any(rule => rule.Calls.IsEmpty)))
        {
            yield break;
        }

        var own = family.Own.SelectMany(Rules).Where(rule => rule.Calls.IsEmpty).ToLookup(rule => rule.Source);
        var idle = own.Select(rule => rule.Key).ToHashSet();
        foreach (var member in family.All)
        {
            var judged = Rules(member).Where(rule => idle.Contains(rule.Source)).ToList();
            if (judged.Count > 0)
            {
                var without = RefitDerivation.Implied(member.Facts, member.Outcome.Strip!).ToHashSet<OrderRule>(ReferenceEqualityComparer.Instance);
                idle.ExceptWith(judged.Where(rule => !without.Contains(rule)).Select(rule => rule.Source));
            }
        }

        foreach (var source in own.Select(rule => rule.Key).Where(idle.Contains))
        {
            yield return At(family.Own[0], own[source].First(), source);
        }
    }

    private static IEnumerable<OrderRule> Rules(FamilyMember member) => member.Outcome.Procedure.Rules.OfType<OrderRule>();

    private static Finding At(FamilyMember member, OrderRule rule, SourceSpan source) =>
        new(
            Id,
            $"{ItemPhrases.Written(new NamedAction(rule.Later.Verb, rule.Later.Target))} has to wait for "
                + $"{ItemPhrases.Written(new NamedAction(rule.Earlier.Verb, rule.Earlier.Target))} without this rule",
            source,
            "changes nothing")
        {
            Help = "take the rule out, or turn it round if the other order was meant",
            Fixes = [.. StepEdits.Delete(member.Outcome.Strip!, rule)],
        };
}
