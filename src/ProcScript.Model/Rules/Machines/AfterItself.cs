using System.Collections.Immutable;
using ProcScript.Model.Machines;
using ProcScript.Model.Rules.Wording;
using ProcScript.Syntax.Findings;

namespace ProcScript.Model.Rules.Machines;

/// <summary>Energies that wait for each other.</summary>
public sealed class AfterItself : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id =
        new("PRC2014", "after-itself", "Energies that are isolated after each other", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "The `after` of some energies goes round in a circle: each waits until another of them is isolated.",
        Why: "None of them could ever be isolated, so nothing on them could ever be opened.",
        Wrong: """
            machine drive "drive unit" {
              energy traction "traction battery" { after control_supply  isolate "Pull the service plug."  restore "Put it in." }
              energy control_supply "control supply" { after traction  isolate "Pull the fuse."  restore "Put it in." }
            }
            """,
        Right: """
            machine drive "drive unit" {
              energy traction "traction battery" { after control_supply  isolate "Pull the service plug."  restore "Put it in." }
              energy control_supply "control supply" { isolate "Pull the fuse."  restore "Put it in." }
            }
            """);

    /// <summary>Of a circle, each energy after the next and the last after the first.</summary>
    internal static Finding At(ImmutableArray<Energy> circle) =>
        new(
            Id,
            circle.Length == 1
                ? $"the {circle[0].Title} is to be isolated after itself"
                : $"{WordList.And(circle.Select(energy => $"the {energy.Title}"))} are to be isolated after each other",
            circle[0].Declared)
        {
            Related = [.. circle.Skip(1).Select(energy => new LabeledSpan(energy.Declared, "waits in the same circle"))],
            Help = "take one `after` out: the energy that comes off first waits for none",
        };
}
