using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Tools;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Tools;

/// <summary>A joint is tightened to a torque with nothing but a spanner, and the catalog has no crowfoot of that size. Common practice, no source.</summary>
public sealed class CrowfootMissing : OutcomeRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new(
        "PRC5075",
        "crowfoot-missing",
        "A torque is asked for where only a spanner fits, and there is no crowfoot",
        Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A joint is tightened to a torque, and of its tools none sits on the square drive of a torque wrench: there are spanners (by their titles: "
            + "spanners of any sort; open, ring, flare, line and union wrenches), and no socket, bit, adapter or crowfoot. The catalog that the procedure "
            + "sees has no crowfoot of the size of the first of them.",
        Why: "Nobody can set a torque with a spanner. The card names a crowfoot, but nobody has put one into the shop's catalog, and so nobody may "
            + "have one: the union gets tightened by feel, and leaks or splits.",
        Wrong: """
            tool open_19 "19 mm open spanner" { size 19 mm }
            line union "oil union" { tool open_19  torque 22 ± 2 N.m }

            machine press "Press" {
              fluid oil "oil" { charge 1 ± 0.1 L  empty "Open the drain."  fill "Fill to the mark." }
              part valve "valve" { piped by 1 union as valve_union carries oil }
            }

            procedure valve_off "Take the valve off" on press {
              goal remove valve
              stage "Valve" {
                empty oil
                disconnect valve_union
                remove valve
              }
              refit { check "No leak and no air at the union." needs oil full }
            }
            """,
        Right: """
            tool open_19 "19 mm open spanner" { size 19 mm }
            tool crowfoot_19 "19 mm crowfoot" { size 19 mm }
            line union "oil union" { tool open_19  torque 22 ± 2 N.m }

            machine press "Press" {
              fluid oil "oil" { charge 1 ± 0.1 L  empty "Open the drain."  fill "Fill to the mark." }
              part valve "valve" { piped by 1 union as valve_union carries oil }
            }

            procedure valve_off "Take the valve off" on press {
              goal remove valve
              stage "Valve" {
                empty oil
                disconnect valve_union
                remove valve
              }
              refit { check "No leak and no air at the union." needs oil full }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(ProcedureOutcome outcome)
    {
        Crowfoots? crowfoots = null;
        return
            from action in outcome.Refit!.Actions
            where action.Verb is Verb.Fasten or Verb.Tighten or Verb.Connect or Verb.Engage or Verb.Plug
            let joint = (Joint)action.Target!
            let details = StepOrigin.Details(action)
            let torque = details.Torque ?? joint.Torque
            where torque is not null
            let spanner = Crowfoots.Spanner([.. Crowfoots.ToolsOf(joint), .. details.Tools])
            where spanner is not null && (crowfoots ??= outcome.Strip!.Library.Crowfoots(outcome.Procedure)).For(spanner) is null
            group (joint, spanner, torque) by joint.Kind into same
            select At(same.Key, same.First().joint, same.First().spanner, same.First().torque.Final);
    }

    private static Finding At(Kind kind, Joint joint, Tool spanner, Quantity torque)
    {
        var size = spanner.Size is { } across ? $"{across.Print()} " : "";
        return new(
            Id,
            $"`{joint.Name}` is tightened to {torque.Print()}, its tool is {spanner.Title}, and the catalog has no {size}crowfoot for the torque wrench",
            kind.Declared,
            "has a torque, and only a spanner")
        {
            Related = [new LabeledSpan(joint.Declared, "tightened here, for one")],
            Help = spanner.Size is { } known
                ? $"put it into the catalog: `tool crowfoot \"{size}crowfoot\" {{ size {known.Print()} }}`; or name the socket that fits as the `drive`"
                : "give the spanner its `size` and put a crowfoot of that size into the catalog, or name the socket that fits as the `drive`",
        };
    }
}
