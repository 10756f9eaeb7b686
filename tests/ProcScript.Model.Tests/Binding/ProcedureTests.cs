using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;

namespace ProcScript.Model.Tests.Binding;

/// <summary>From the text of a procedure to its steps.</summary>
public sealed class ProcedureTests
{
    private const string Cab = """
        tool lever "lever"
        supply grease "grease"
        clip pin "pin"
        machine cab "cab" {
          energy battery "battery" { isolate "i"  restore "r" }
          control column "column" { up, down }
          each side in left, right { part trim[side] "{side} trim" { held by 2 pin as pins[side] } }
          part lamp "lamp" { held by 1 pin as lamp_pin }
        }

        """;

    [Fact]
    public void A_step_has_its_verb_target_count_position_and_place()
    {
        const string Steps = """
            procedure p "p" on cab { stage "s" {
              release 1 of pins[left]
              release rest of pins[left]
              set column to down
              isolate battery
              clean lamp in background
              check "All well" expect 3 needs battery live
            } }
            """;
        var library = Samples.Bind(Cab + Steps);
        Assert.Empty(library.Words());
        var steps = library.Procedures[0].Stages[0].Steps;
        Assert.Equal([Verb.Release, Verb.Release, Verb.Set, Verb.Isolate, Verb.Clean, Verb.Check], steps.Select(step => step.Verb));
        Assert.Equal(["pins[left]", "pins[left]", "column", "battery", "lamp", null], steps.Select(step => step.Target?.Name));
        Assert.Equal([1, null, null, null, null, null], steps.Select(step => step.Count));
        Assert.Equal([-1, -1, 1, -1, -1, -1], steps.Select(step => step.Position));
        Assert.Equal([false, false, false, false, true, false], steps.Select(step => step.InBackground));
        Assert.Equal(("All well", "3", NeededState.Live), (steps[5].Text, steps[5].Expect!.Print(), steps[5].Conditions[0].State));

        var text = Cab + Steps;
        Assert.Equal("release 1 of pins[left]", text.Substring(steps[0].Source.Span.Start, steps[0].Source.Span.Length));
        Assert.Equal("release", text.Substring(steps[0].VerbSpan.Span.Start, steps[0].VerbSpan.Span.Length));
        Assert.Equal("pins[left]", text.Substring(steps[0].TargetSpan.Span.Start, steps[0].TargetSpan.Span.Length));
        Assert.Equal(steps[5].VerbSpan, steps[5].TargetSpan);
    }

    [Fact]
    public void A_block_gives_the_step_its_details()
    {
        var library = Samples.Bind(Cab + """
            procedure p "p" on cab { stage "s" { each side in left, right {
              release pins[side] {
                how "First."  how "Then the {side} one."  tool lever  people 2  time 40 s  photo "pins"  check "sound"  ppe "gloves"
                uses 2 g of grease  caution "sharp"  needs battery isolated  store "tray"
                refit { how "Back."  torque 3 N.m  notice "soft" }
              }
            } } }
            """);
        Assert.Empty(library.Words());
        var step = library.Procedures[0].Stages[0].Steps[1];
        var details = step.Details;
        Assert.Equal(["First.", "Then the right one."], details.How);
        Assert.Equal((2, "40 s", "tray"), (details.People, details.Time!.Print(), details.Store));
        Assert.Equal(["pins", "sound", "gloves"], details.Photos.Concat(details.Checks).Concat(details.Ppe));
        Assert.Equal(("lever", "2 g", "sharp"), (details.Tools[0].Name, details.Uses[0].Amount.Print(), details.Alerts[0].Text));
        Assert.Equal(("Back.", "3 N·m", "soft"), (details.Refit!.How[0], details.Refit.Torque!.Print(), details.Refit.Alerts[0].Text));
        Assert.Equal(NeededState.Isolated, step.Conditions[0].State);
    }

    [Fact]
    public void A_step_without_a_block_has_no_details()
    {
        var library = Samples.Bind(Cab + "procedure p \"p\" on cab { stage \"s\" { release lamp_pin } }");
        Assert.Same(ActionDetails.None, library.Procedures[0].Stages[0].Steps[0].Details);
    }

    [Fact]
    public void A_procedure_with_parameters_is_made_for_every_choice()
    {
        var library = Samples.Bind(Cab + """
            procedure out(side in left, right, times in 1..2) "{side} trim off, {times}" on cab {
              stage "{side}" { release pins[side]  remove trim[side] }
            }
            """);
        Assert.Equal(
            ["left,1 left trim off, 1", "left,2 left trim off, 2", "right,1 right trim off, 1", "right,2 right trim off, 2"],
            library.Procedures.Select(one => $"{string.Join(',', one.Arguments)} {one.Title}"));
        Assert.Equal("trim[right]", library.Procedures[3].Stages[0].Steps[1].Target!.Name);
        Assert.Equal("right", library.Procedures[3].Stages[0].Title);
    }

    [Fact]
    public void Do_brings_stages_rules_alerts_and_details_and_leaves_goal_and_work_behind()
    {
        var library = Samples.Bind(Cab + """
            procedure out(side in left, right) "out" on cab {
              goal inspect lamp
              people 2  ppe "gloves"  tool lever
              danger "Nobody in the cab."
              stage "Trim {side}" { release pins[side]  remove trim[side] }
              work { inspect lamp }
              refit { check "It shuts." after fit trim[side]  discard pins[side] because "worn" }
            }
            procedure both "both" on cab {
              people 1  ppe "goggles"
              each hand in left, right { do out(hand) }
              stage "Lamp" { do out(left)  release lamp_pin }
            }
            """);
        Assert.Empty(library.Words());
        var both = library.Procedures.Single(one => one.Name == "both");
        Assert.Equal(["Trim left", "Trim right", "Lamp"], both.Stages.Select(stage => stage.Title));
        Assert.Equal(["pins[left]", "trim[left]", "lamp_pin"], both.Stages[2].Steps.Select(step => step.Target!.Name));
        Assert.Equal([1, 1, 0], both.Stages[2].Steps.Select(step => step.Calls.Length));
        Assert.Empty(both.Goals);
        Assert.Equal([Verb.Discard, Verb.Discard, Verb.Discard], both.Work.Select(step => step.Verb));
        Assert.Equal("worn", both.Work[0].Text);
        Assert.Equal(3, both.Rules.Length);
        Assert.Equal("Nobody in the cab.", Assert.Single(both.Alerts).Text);
        Assert.Equal(2, both.Details.People);
        Assert.Equal(["goggles", "gloves"], both.Details.Ppe);
        Assert.Equal(["lever"], both.Details.Tools.Select(tool => tool.Name));
    }

    [Fact]
    public void Calls_are_listed_outermost_first()
    {
        var library = Samples.Bind(Cab + """
            procedure inner "inner" on cab { stage "s" { release lamp_pin } }
            procedure middle "middle" on cab { do inner }
            procedure outer "outer" on cab { do middle }
            """);
        var calls = library.Procedures.Single(one => one.Name == "outer").Stages[0].Steps[0].Calls;
        Assert.Equal(2, calls.Length);
        Assert.True(calls[0].Span.Start > calls[1].Span.Start);
    }

    [Fact]
    public void An_alert_before_a_call_binds_to_the_first_step_of_what_is_called()
    {
        var library = Samples.Bind(Cab + """
            procedure inner "inner" on cab { stage "s" { notice "own"  release lamp_pin  remove lamp } }
            procedure outer "outer" on cab { stage "o" { each n in 1..2 { caution "round {n}" }  do inner } }
            """);
        Assert.Empty(library.Words());
        var steps = library.Procedures.Single(one => one.Name == "outer").Stages[0].Steps;
        Assert.Equal(["round 1", "round 2", "own"], steps[0].Alerts.Select(alert => alert.Text));
        Assert.Empty(steps[1].Alerts);
    }

    [Fact]
    public void A_step_that_does_not_resolve_vanishes_and_takes_its_alerts_along()
    {
        var library = Samples.Bind(Cab + """
            procedure p "p" on cab { stage "s" { caution "sharp"  release lamp_pim  remove lamp } }
            """);
        Assert.Equal(["PRC1101 the machine `cab` has nothing called `lamp_pim`"], library.Words());
        var step = Assert.Single(library.Procedures[0].Stages[0].Steps);
        Assert.Empty(step.Alerts);
        Assert.True(library.Procedures[0].HasErrors);
    }
}
