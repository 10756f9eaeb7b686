using ProcScript.Analysis.Energies;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Wording;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Energies;

/// <summary>
/// The posts of a battery or the wires of a mains come off, or go on, in the wrong order. Earth first off and last on at a battery: common
/// practice, read in several workshop pages. The earth of a mains last off and first on, as the long pin of a plug has it: common practice, read.
/// </summary>
public sealed class PostsOutOfOrder : OutcomeRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5060", "posts-out-of-order", "Earth comes off or goes on at the wrong moment", Severity.Warning);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override bool IsEnglish => true;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A part has two joints on one energy, and their names, places or kinds say which is earth. On a battery or another direct supply, "
            + "the one called positive, plus or live comes off before the one called earth, ground, negative or minus, or that one goes on before "
            + "it. On a mains or another alternating supply, the one called earth, ground or protective comes off before the other wires, or "
            + "they go on before it. The rule knows English words from a list.",
        Why: "A spanner on the positive post that touches the frame makes an arc as long as the negative post is on. The earth of a mains is what "
            + "takes a fault away from the hand, so it is there as long as anything else is. It is a warning because the supply is isolated "
            + "meanwhile, and a mistake there is what the order is for.",
        Wrong: """
            connector post "battery post clamp"

            machine van "Van" {
              energy starter "12 V starter battery" { isolate "Open the main switch."  verify "The horn is silent."  restore "Close the main switch." }
              part tray "battery tray"
              part battery "battery" {
                wired by 1 post as positive_clamp { at "right post"  to tray  on starter }
                wired by 1 post as negative_clamp { at "left post"  to tray  on starter }
              }
            }

            procedure battery_out "Take the battery out" on van {
              stage "Battery" {
                isolate starter
                unplug positive_clamp
                unplug negative_clamp
                remove battery
              }
            }
            """,
        Right: """
            connector post "battery post clamp"

            machine van "Van" {
              energy starter "12 V starter battery" { isolate "Open the main switch."  verify "The horn is silent."  restore "Close the main switch." }
              part tray "battery tray"
              part battery "battery" {
                wired by 1 post as positive_clamp { at "right post"  to tray  on starter }
                wired by 1 post as negative_clamp { at "left post"  to tray  on starter }
              }
            }

            procedure battery_out "Take the battery out" on van {
              stage "Battery" {
                isolate starter
                unplug negative_clamp
                unplug positive_clamp
                remove battery
              }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(ProcedureOutcome outcome)
    {
        if (outcome is not { Strip: { } strip, Refit: { } refit } || outcome.Procedure.Machine.Energies.IsEmpty)
        {
            return [];
        }

        // The plain refit turns the strip round, so only what a rule has made of it is told besides.
        return
            from pair in PostPair.Of(strip.Actions)
            let stripped = pair.WrongOff(strip.Actions)
            let wrong = stripped ?? pair.WrongOn(refit.Actions)
            where wrong is not null
            group (pair, IsOff: stripped is not null) by wrong into same
            select At(same.Key, same.First().pair, same.First().IsOff);
    }

    private static Finding At(PerformedAction action, PostPair pair, bool isOff)
    {
        var (earth, live) = (ItemPhrases.The(pair.Earth), ItemPhrases.The(pair.Live));
        var message = (pair.IsBattery, isOff) switch
        {
            (true, true) => $"{live} comes off while {earth} is still on",
            (true, false) => $"{earth} goes on before {live} is",
            (false, true) => $"{earth} comes off while {live} is still on",
            _ => $"{live} goes on before {earth} is",
        };
        return new Finding(Id, message, StepOrigin.Source(action), isOff ? "too early" : "in the refit, its inverse goes too early")
        {
            Related = [new LabeledSpan(pair.Earth.Declared, "earth, by its words"), new LabeledSpan(pair.Live.Declared, "live, by its words")],
            Help = pair.IsBattery
                ? "take the earth of a battery off first, and put it on last"
                : "take the earth of a mains off last, and put it on first",
        };
    }
}
