using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Saying;
using ProcScript.Analysis.Wording;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Unsaid;

/// <summary>A gasket of which nobody has said what disturbs it. Common practice, no source.</summary>
public sealed class GasketWithoutRenewal : MachineRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC8004", "gasket-without-renewal", "A gasket of which nothing says when it must be renewed", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override bool IsEnglish => true;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A part whose title ends in *gasket*, *seal*, *O-ring* or *packing* has no `renew with`.",
        Why: "What lies between two faces is disturbed when one of them comes off, even where the job never touches it. Without `renew with` a job "
            + "may put the old one back, or leave it in. Where nothing disturbs it, write `renew with none`.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
              part seal "guard gasket" { behind guard }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
              part seal "guard gasket" { behind guard  renew with guard }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(MachineFacts facts) =>
        from part in facts.Machine.Parts
        where part is { RenewWith.IsEmpty: true, RenewsWithNone: false } && TradeNouns.Gasket().IsMatch(part.Title)
        select new Finding(Id, $"nothing says with what {ItemPhrases.The(part)} must be renewed", part.Declared, "has no `renew with`")
        {
            Help = "write `renew with` and what it lies between, or `renew with none`",
        };
}
