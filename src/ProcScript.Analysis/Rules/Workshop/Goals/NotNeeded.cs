using System.Globalization;
using ProcScript.Analysis.Necessity;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Wording;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Rules.Workshop.Goals;

/// <summary>Something comes off that the goal does not need.</summary>
public sealed class NotNeeded : FamilyRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5081", "not-needed", "A step that the goal does not need", Severity.Hint)
    {
        Fix = FixAvailability.Always,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "Steps open, move or switch something, and without them the procedure would still be proven and still do what its "
            + "goal says, in every variant and for every procedure that calls it. Work, checks, what the refit rules name and what "
            + "is discarded count as wanted; so does all that keeps people safe, `isolate`, `empty` and `support`, with what it takes, "
            + "and a `loosen` before the `undo` of the same fasteners. Steps that only each other need are told together. A procedure without a goal is not "
            + "judged, and a called one is judged at its `do`.",
        Why: "It costs time, on the way out and on the way back, and each thing that is opened can break. It is no more than a hint, "
            + "for it may be there for a reason that the machine's text does not know: then write it down, with `behind` or `needs`.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
              part tray "tray" { held by 2 pin as tray_pins }
            }

            procedure guard_off "Take the guard off" on press {
              goal remove guard
              stage "Guard" {
                release tray_pins
                remove tray
                release guard_pins
                remove guard
              }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" {
              part guard "guard" { held by 4 pin as guard_pins }
              part tray "tray" { held by 2 pin as tray_pins }
            }

            procedure guard_off "Take the guard off" on press {
              goal remove guard
              stage "Guard" {
                release guard_pins
                remove guard
              }
            }
            """);

    /// <inheritdoc/>
    internal override IEnumerable<Finding> Check(ProcedureFamily family) => NeedlessLines.Of(family).Select(group => At(family, group));

    private static Finding At(ProcedureFamily family, NeedlessGroup group)
    {
        var first = family.Own[0].Outcome;
        var tree = first.Strip!.Library.Around(first.Procedure.Declared)!;
        var lines = group.Lines.ToHashSet();
        var procedure = tree.Root.Declarations.OfType<ProcedureSyntax>().First(one => one.Name.Span == first.Procedure.Declared.Span);
        var nodes = procedure.DescendantsAndSelf().Where(node => node is ActionSyntax or DoSyntax && lines.Contains(node.Span)).ToList();
        var places = nodes.Select(node => new SourceSpan(tree.Text.Path, Head(node))).ToList();
        var written = ItemPhrases.List(places.Select(place => $"`{tree.Text.Quote(place.Span)}`"));
        var (are, it) = nodes.Count == 1 ? ("is", "it") : ("are", "they");
        var variants = family.Own.Select(member => member.Outcome.Procedure.Machine).Distinct().Count() > 1 ? ", in any variant" : "";
        return new Finding(
            Id,
            $"{written} {are} not needed{For(family)}{variants}: about {Words(group.Seconds)} of work with the way back",
            places[0],
            nodes.Count == 1 ? "nothing that is wanted here leans on it" : "nothing that is wanted here leans on these")
        {
            Related =
            [
                .. places.Skip(1).Select(place => new LabeledSpan(place, "nor on this")),
                .. first.Procedure.Goals.Select(goal => new LabeledSpan(goal.Source, "the goal")),
            ],
            Help = $"take {(it == "it" ? it : "them")} out; if {it} {are} there {Reason(nodes)}",
            Fixes = [LineRemoval.Fix(tree.Text, procedure, lines)],
        };
    }

    private static TextSpan Head(SyntaxNode node) => node is ActionSyntax action
        ? action.Verb.Span.Cover((action.Position ?? (SyntaxNode)action.Target).Span)
        : node.Span;

    /// <summary>What the procedure is for, where that is the same in every variant.</summary>
    private static string For(ProcedureFamily family)
    {
        var goals = family.Own
            .Select(member => ItemPhrases.List(member.Outcome.Procedure.Goals.Select(goal => ItemPhrases.Cue(new NamedAction(goal.Verb, goal.Target)))))
            .Distinct()
            .ToList();
        return goals.Count == 1 ? $" to {goals[0]}" : " for the goal";
    }

    private static string Reason(IEnumerable<SyntaxNode> nodes) =>
        nodes.Any(node => node is ActionSyntax { Verb.Text: "set" })
            ? "to keep people safe, let the machine say so where it is true, with `on` or `needs`"
            : "to make room, let the machine say so with `behind` or `needs`";

    private static string Words(double seconds) => seconds < 90
        ? string.Create(CultureInfo.InvariantCulture, $"{Math.Max(5, Math.Round(seconds / 5) * 5)} s")
        : string.Create(CultureInfo.InvariantCulture, $"{Math.Round(seconds / 60)} min");
}
