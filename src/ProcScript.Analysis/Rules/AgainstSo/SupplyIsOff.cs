using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.AgainstSo;

/// <summary>A check speaks of an energy or a fluid at work that is off by then. It follows from the run; no source.</summary>
public sealed class SupplyIsOff : AgainstSoRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC8102", "supply-is-off", "A check wants what is off", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A check or a measurement names an energy that is isolated and says that something runs, lights or starts, or names a fluid that is out and speaks of its level. "
            + "Readings and leaks are for PRC5054.",
        Why: "The lamp stays dark, and whoever checks looks for a fault that is none; or ticks the box.",
        Wrong: """
            machine press "Press" {
              energy battery "12 V battery" { isolate "Take the negative cable off."  verify "The lamp stays dark."  restore "Fit the cable." }
              part tray "tray" { needs battery isolated }
            }

            procedure tray_off "Take the tray off" on press {
              stage "Tray" {
                isolate battery
                remove tray
              }
              refit { check "The lamp lights from the 12 V battery." before fit tray }
            }
            """,
        Right: """
            machine press "Press" {
              energy battery "12 V battery" { isolate "Take the negative cable off."  verify "The lamp stays dark."  restore "Fit the cable." }
              part tray "tray" { needs battery isolated }
            }

            procedure tray_off "Take the tray off" on press {
              stage "Tray" {
                isolate battery
                remove tray
              }
              refit { check "The lamp lights from the 12 V battery." needs battery live }
            }
            """);

    /// <inheritdoc/>
    private protected override string Help => "give the check `needs` with what has to be back, or let it stand where that is so";

    /// <inheritdoc/>
    private protected override bool IsAbout(MachineItem item) => item is Energy or Fluid;

    /// <inheritdoc/>
    private protected override string State(MachineItem item) => item is Energy ? "is isolated" : "is out";
}
