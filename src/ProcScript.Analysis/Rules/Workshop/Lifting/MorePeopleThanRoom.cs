using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Wording;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules.Workshop.Lifting;

/// <summary>A step takes more people than there is room for where it is done. Common practice, no source.</summary>
public sealed class MorePeopleThanRoom : StripRule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC5065", "more-people-than-room", "A step takes more people than its place has room for", Severity.Hint)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "A step says how many people it takes, and its item or the step itself is `in` a place that has room for fewer. The rest of them lend a "
            + "hand from outside: the card says so, and who plans for several people counts on it.",
        Why: "Two people who read that they lift together look for a footing each, and one has none. Where all of them stand outside, the step says `in none`; "
            + "where the others do help from outside, allow it and say so.",
        Wrong: """
            clip pin "push pin"

            machine press "Press" {
              place pit "pit" room for 1
              part guard "guard" { in pit  held by 4 pin as guard_pins }
            }

            procedure guard_off "Take the guard off" on press {
              goal remove guard
              stage "Guard" {
                release guard_pins
                remove guard { people 2 }
              }
            }
            """,
        Right: """
            clip pin "push pin"

            machine press "Press" {
              place pit "pit" room for 1
              part guard "guard" { in pit  held by 4 pin as guard_pins }
            }

            procedure guard_off "Take the guard off" on press {
              goal remove guard
              stage "Guard" {
                release guard_pins
                remove guard { people 2  in none }
              }
            }
            """);

    /// <inheritdoc/>
    public override IEnumerable<Finding> Check(StripRun run) =>
        from action in run.Actions
        let step = RefitFinding.Step(action)
        where step is not null && action.Origin is WrittenStep
        let place = step.Details.In ?? StepRooms.Of(action.Target)
        where place is not null && step.Details.People > place.Room
        select At(step, place);

    private static Finding At(Step step, Workplace place)
    {
        var end = step.Source with { Span = new(step.Source.Span.End - 1, 0) };
        return new Finding(
            Id,
            $"`{step.Verb.ToString().ToLowerInvariant()}` takes {step.Details.People} people, and there is room for {place.Room} in the {place.Title}",
            step.VerbSpan,
            "more people than room")
        {
            Related = [new LabeledSpan(place.Declared, "the place")],
            Help = $"write `in none` at the step if all of them stand outside; else {place.Room} of them {(place.Room == 1 ? "works" : "work")} in it and the others lend a hand from outside",
            Fixes = step.Details.In is null ? [new Fix("Say that they stand outside", FixGrade.NeedsLook, [new TextEdit(end, " in none ")])] : [],
        };
    }
}
