using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Machine;

/// <summary>Nothing can free a part.</summary>
public sealed class NothingFreesIt : MachineRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC2002", "nothing-frees-it", "Nothing can free a part", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "What holds or hides a part can never be got at: its joints are reached only once something else is away that "
            + "itself waits for this part, or a condition asks for what the machine has no way to.",
        Why: "No procedure can ever take it off, and whatever lies behind it stays out of reach too.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins { behind shield } }
              part shield "shield" { held by 2 pin as shield_pins { behind guard } }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins { behind shield } }
              part shield "shield" { held by 2 pin as shield_pins }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(MachineFacts facts) =>
        from knot in StuckKnots.Of(facts.Freedom)
        let parts = knot.Goals.Select(goal => goal.Item).OfType<Part>().Distinct().ToList()
        let item = parts.Count > 0 ? parts[0] : knot.Goals[0].Item
        select new Finding(
            Id,
            knot.Goals[0] is { Kind: FreeingKind.Fitted, Item: var temporary }
                ? $"nobody can ever fit {ItemPhrases.The(temporary)} and fasten it"
                : parts.Count > 0
                ? $"nothing can free {ItemPhrases.List(parts.Select(ItemPhrases.The))}"
                : $"nobody can ever get at {ItemPhrases.The(item)}",
            item.Declared,
            ItemPhrases.List(knot.Lacks.Where(lack => lack.Goal.Item == item).Select(Lack).Distinct()))
        {
            Related =
            [
                .. knot.Lacks.Where(lack => lack.Clause.Condition is not null)
                    .Select(lack => new LabeledSpan(lack.Clause.Condition!.Declared, Lack(lack)))
                    .Distinct(),
            ],
            Help = "say with `aside` how a part moves out of the way, or take a condition out",
        };

    private static string Lack(FreeingLack lack) => lack.Clause.Condition is { } condition
        ? $"{ItemPhrases.The(lack.Goal.Item)} needs {NeedPhrases.Wanted(condition)}"
        : $"{ItemPhrases.The(lack.Goal.Item)} needs {ItemPhrases.The(lack.Clause.About)} {Done(lack.Clause)}";

    private static string Done(FreeingClause clause) => clause.Ways is [{ Kind: FreeingKind.Fitted }]
        ? ActionTable.Closing(clause.About).Done
        : ActionTable.Opening(clause.About).Done;
}
