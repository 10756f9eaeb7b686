using System.Collections.Immutable;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Analysis.Prose;
using ProcScript.Analysis.Runs;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Workshop.Tools;

/// <summary>A text tells people to take a tool or to wear something, and no list has it. Common practice, no source.</summary>
public sealed class NamedNotListed : OutcomeRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5064", "named-not-listed", "A text names a tool or protective equipment that is not listed", Severity.Hint);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override bool IsEnglish => true;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A text at a step, of its item or in an alert says to work *with* a tool (a second spanner, a puller, a scraper, a meter), to counter-hold, to jack "
            + "something up, or to *wear* something, and neither the step nor its item nor the whole job has a `tool` or a `ppe` of that sort.",
        Why: "Whoever lays out what the list says walks back for it in the middle of the job, or does without.",
        Wrong: """
            tool socket_13 "13 mm socket" { size 13 mm }
            fastener nut "nut" { drive socket_13  release "Hold the stud with a second spanner." }

            machine press "Press" { part guard "guard" { held by 4 nut as guard_nuts } }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                undo guard_nuts
                remove guard
              }
            }
            """,
        Right: """
            tool socket_13 "13 mm socket" { size 13 mm }
            tool open_13 "13 mm open spanner" { size 13 mm }
            fastener nut "nut" { drive socket_13  tool open_13  release "Hold the stud with a second spanner." }

            machine press "Press" { part guard "guard" { held by 4 nut as guard_nuts } }

            procedure guard_off "Take the guard off" on press {
              stage "Guard" {
                undo guard_nuts
                remove guard
              }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(ProcedureOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        var (job, read) = (outcome.Procedure.Details, new Dictionary<string, ImmutableArray<NamedGear>>(StringComparer.Ordinal));
        var findings = new List<Finding>();
        var worn = new HashSet<string>(job.Ppe, StringComparer.Ordinal);
        foreach (var action in outcome.Strip!.Actions.Concat(outcome.Refit!.Actions))
        {
            // Most texts name nothing, and then nobody asks for the list.
            var gear = outcome.Procedure.Alerts.IsEmpty ? null : GearOf(action);
            worn.UnionWith(gear?.Worn ?? []);
            foreach (var (words, place) in Texts(action))
            {
                foreach (var named in Named(words))
                {
                    if (!(gear ??= GearOf(action)).Has(named))
                    {
                        findings.Add(At(named, place, words));
                    }
                }
            }
        }

        // What the job as a whole warns of may be worn at any of its steps.
        findings.AddRange(
            from alert in outcome.Procedure.Alerts
            from named in Named(alert.Text)
            where named.IsWorn && !worn.Any(named.Fits)
            select At(named, alert.Source, alert.Text));
        return findings.DistinctBy(finding => (finding.Primary, finding.Message));

        Listed GearOf(PerformedAction action)
        {
            var details = StepOrigin.Details(action);
            return new Listed([.. job.Tools.Concat(details.Tools).Concat(ToolsOf(action.Target)).Select(tool => tool.Title).Distinct()], [.. job.Ppe, .. details.Ppe, .. PpeOf(action.Target)]);
        }

        ImmutableArray<NamedGear> Named(string text)
        {
            if (!read.TryGetValue(text, out var named))
            {
                read.Add(text, named = [.. NamedGear.In(text)]);
            }

            return named;
        }
    }

    /// <summary>What is said at an action, and where that is written.</summary>
    private static IEnumerable<(string Words, SourceSpan Place)> Texts(PerformedAction action)
    {
        var source = StepOrigin.Source(action);
        foreach (var text in SpokenText.Of(action))
        {
            yield return (text, source);
        }

        if (OfItem(action) is { } said)
        {
            yield return (said, source);
        }

        var (own, mirrored) = StepOrigin.Alerts(action.Origin);
        foreach (var alert in own)
        {
            yield return (alert.Text, alert.Source);
        }

        foreach (var alert in mirrored)
        {
            yield return (alert.Text, alert.Source);
        }

        foreach (var alert in action.Target?.Alerts ?? [])
        {
            yield return (alert.Text, alert.Source);
        }
    }

    /// <summary>What the item says of taking it off, beside what is said of putting it back.</summary>
    private static string? OfItem(PerformedAction action) => action switch
    {
        { Verb: Verb.Undo or Verb.Loosen or Verb.Release or Verb.Unplug or Verb.Disconnect or Verb.Cut, Target: Joint joint } => joint.Release,
        { Verb: Verb.Aside, Target: Part part } => part.Aside?.How,
        { Verb: Verb.Empty, Target: Fluid fluid } => fluid.Empty,
        { Verb: Verb.Isolate, Target: Energy energy } => string.Join(' ', [energy.Prepare, energy.Shutdown, energy.Isolate, energy.Bleed]),
        _ => null,
    };

    private static IEnumerable<Model.Catalog.Tool> ToolsOf(MachineItem? item) => item switch
    {
        Joint joint => Analysis.Tools.Crowfoots.ToolsOf(joint),
        Energy energy => [.. energy.Tools, .. energy.VerifyAt?.Tools ?? []],
        null => [],
        _ => item.Tools,
    };

    private static IEnumerable<string> PpeOf(MachineItem? item) =>
    [
        .. item?.Ppe ?? [],
        .. (item as Joint)?.Kind.Ppe ?? [],
        .. (item?.Hazards ?? []).SelectMany(hazard => UsualCautions.ForLettingGo(hazard, item!).Gear).Select(gear => gear.Title(Messages.Wordbook.English)),
    ];

    private static Finding At(NamedGear named, SourceSpan place, string text) => new(
        Id,
        named.Count > 1
            ? $"\"{text}\": that takes two tools that turn or hold, and the list has fewer"
            : $"\"{text}\" names what no {(named.IsWorn ? "`ppe`" : "`tool`")} there has: {named.Words.ToLowerInvariant()}",
        place,
        named.IsWorn ? "not among what to wear" : "not among the tools")
    {
        Help = named.IsWorn ? "write `ppe` at the step, at its item or for the whole job" : "write `tool` at the step, at its item or its kind",
    };

    /// <summary>What a step takes.</summary>
    private sealed record Listed(ImmutableArray<string> Tools, ImmutableArray<string> Worn)
    {
        public bool Has(NamedGear named) => named.IsWorn
            ? Worn.Concat(Tools).Any(named.Fits)
            : Tools.Count(named.Fits) >= named.Count;
    }
}
