using ProcScript.Analysis.Plans;

namespace ProcScript.Analysis.Tests.Plans;

/// <summary>What a plan says of energies and hazards.</summary>
public sealed class SafetyTests
{
    private const string Library = """
        tool socket_13 "13 mm socket"
        fastener hex "hex bolt" { drive socket_13 }
        clip strut "strut clip" { hazard spring }
        connector squib "squib connector" { hazard restraint }

        machine cab "Cab" {
          energy ignition "ignition" { isolate "Pull the key."  verify "The dash stays dark."  restore "Put the key in." }
          energy battery "12 V battery" {
            after    ignition
            prepare  "Have the key of the flap."
            shutdown "Switch all users off."
            isolate  "Take the negative cable off."
            lock     "Hang your tag on the post."
            bleed    "Switch the lamps on."
            wait     10 min
            verify   "Measure at the posts." expect <= 0.5 V
            restore  "Refit the cable."
          }
          part loom "loom"
          part hatch "hatch" { hazard suspended_load  held by 2 strut as hatch_struts  held by 2 hex as hatch_bolts }
          part airbag "driver airbag" {
            hazard restraint
            warning "An airbag can break your arms. Carry it face up."
            held by 2 hex as airbag_bolts
            wired by 1 squib as airbag_plug { to loom  on battery }
          }
          part core "heater core" { hazard hot_surface  held by 2 hex as core_bolts }
        }

        procedure all_out "Take all out" on cab {
          goal replace airbag
          stage "Make safe" {
            isolate ignition
            isolate battery
          }
          stage "Hatch" {
            support hatch
            release hatch_struts
            undo hatch_bolts
            remove hatch
          }
          stage "Airbag" {
            unplug airbag_plug
            undo airbag_bolts
            remove airbag
            undo core_bolts
            remove core
          }
          work { replace airbag }
        }
        """;

    private static readonly Plan Job = PlanOf.Text(Library);

    [Fact]
    public void The_authors_words_come_in_the_order_of_the_rule()
    {
        var battery = Job.Energies[1];

        Assert.Equal(["ignition"], battery.After);
        Assert.Equal(
            [
                "prepare Have the key of the flap.", "shut down Switch all users off.", "isolate Take the negative cable off.",
                "lock Hang your tag on the post.", "release Switch the lamps on.", "wait 10 min.", "verify Measure at the posts.",
            ],
            battery.MakeSafe.Select(line => $"{line.Action} {line.Text}"));
        Assert.DoesNotContain(battery.MakeSafe, line => line.IsUsual);
    }

    [Fact]
    public void What_the_author_leaves_out_is_usual_and_marked()
    {
        var ignition = Job.Energies[0];

        Assert.Equal(["prepare", "shut down", "lock", "release"], ignition.MakeSafe.Where(line => line.IsUsual).Select(line => line.Action));
        Assert.All(ignition.MakeSafe, line => Assert.NotEmpty(line.Text));
        var back = Job.Step("Restore the ignition");
        Assert.Equal(["area", "people", "locks", "tell"], back.Return!.Lines.Where(line => line.IsUsual).Select(line => line.Action));
        Assert.Equal(["Put the key in."], back.How);
    }

    [Fact]
    public void They_come_back_the_other_way_round() =>
        Assert.True(Job.Energies[1].RestoredAt < Job.Energies[0].RestoredAt);

    [Fact]
    public void The_step_that_isolates_says_all_of_it_and_ends_with_the_reading()
    {
        var step = Job.Step("Isolate the 12 V battery");

        Assert.Equal(
            ["Have the key of the flap.", "Switch all users off.", "Take the negative cable off.", "Hang your tag on the post.", "Switch the lamps on.", "Then wait 10 min."],
            step.How);
        Assert.Equal(new PlanReading("Measure at the posts.", "≤ 0.5 V"), step.Reading);
    }

    [Fact]
    public void A_mark_puts_one_usual_caution_before_the_first_step_of_a_card_that_touches_it()
    {
        Assert.Equal(["support hatch: warning", "release hatch_struts: warning"], Usual(Job.Strip[1]));
        Assert.Equal(["undo core_bolts: "], Job.Strip[2].Steps.Where(step => step.Item == "core_bolts").Select(Words));
        Assert.Contains("remove core: caution", Usual(Job.Strip[2]));
    }

    [Fact]
    public void What_was_hot_is_cold_on_the_way_back() => Assert.DoesNotContain(
        Job.Refit.SelectMany(card => card.Steps).SelectMany(step => step.Alerts),
        alert => alert.Word == "caution");

    [Fact]
    public void The_authors_own_alert_of_the_same_kind_is_enough()
    {
        // The plug comes first and has no alert of its own; where the airbag itself comes first, the author's warning does.
        Assert.Contains("unplug airbag_plug: warning", Usual(Job.Strip[2]));
        var noPlug = PlanOf.Text(Library.Replace("unplug airbag_plug\n", "strip airbag\n", StringComparison.Ordinal)
            .Replace("    undo airbag_bolts\n    remove airbag\n", "", StringComparison.Ordinal)
            .Replace(" to loom  on battery ", " to loom  on battery  warning \"The airbag can fire.\" ", StringComparison.Ordinal));

        Assert.DoesNotContain(Usual(noPlug.Strip[2]), words => words.StartsWith("unplug", StringComparison.Ordinal));
    }

    [Fact]
    public void The_plan_lists_what_the_job_touches() => Assert.Equal(
        ["suspended_load: hatch", "spring: 2 × strut clip (hatch)", "restraint: 1 × squib connector (driver airbag), driver airbag", "hot_surface: heater core"],
        Job.Hazards.Select(hazard => $"{hazard.Word}: {string.Join(", ", hazard.Items)}"));

    [Fact]
    public void Each_hazard_has_a_caution_with_a_word_that_fits()
    {
        var words = Enum.GetValues<Model.Machines.Hazard>().ToDictionary(hazard => hazard, hazard => ProcScript.Analysis.Plans.Words.UsualCautions.Of(hazard));

        Assert.All(words.Values, caution => Assert.True(Model.Procedures.SignalWords.IsOfInjury(caution.Word) && caution.Text.Length > 20));
        Assert.Equal(Model.Procedures.SignalWord.Danger, words[Model.Machines.Hazard.HighVoltage].Word);
        Assert.Equal(Model.Procedures.SignalWord.Caution, words[Model.Machines.Hazard.HotSurface].Word);
    }

    private static IEnumerable<string> Usual(PlanStage card) =>
        card.Steps.Where(step => step.Alerts.Any(alert => alert.IsUsual)).Select(Words);

    private static string Words(PlanStep step) =>
        $"{step.Verb} {step.Item}: {string.Join(' ', step.Alerts.Where(alert => alert.IsUsual).Select(alert => alert.Word))}";
}
