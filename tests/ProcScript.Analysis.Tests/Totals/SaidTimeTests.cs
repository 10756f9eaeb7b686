using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Tests.Plans;
using ProcScript.Analysis.Totals;

namespace ProcScript.Analysis.Tests.Totals;

/// <summary>Times in texts count, and nothing counts twice.</summary>
public class SaidTimeTests
{
    [Theory]
    [InlineData("Hold it for 30 min.", 1800)]
    [InlineData("Wait 10 minutes.", 600)]
    [InlineData("Wait at least 10 min, then go on.", 600)]
    [InlineData("Let it soak for 20 to 30 min.", 1800)]
    [InlineData("Let it cool for half an hour.", 1800)]
    [InlineData("Run it for ten minutes, then wait for 90 s.", 690)]
    [InlineData("Wait for an hour.", 3600)]
    [InlineData("Mindestens 10 Minuten warten.", 600)]
    [InlineData("Für 1,5 h trocknen lassen.", 5400)]
    [InlineData("30 Minuten lang evakuieren.", 1800)]
    [InlineData("Attendez 10 minutes.", 600)]
    [InlineData("Sécher pendant 2 heures.", 7200)]
    [InlineData("Espere 5 minutos.", 300)]
    [InlineData("Odczekaj 10 minut.", 600)]
    [InlineData("Suszyć przez 2 godziny.", 7200)]
    [InlineData("Within 10 min of opening, cap the ends.", 0)]
    [InlineData("Never longer than 10 s.", 0)]
    [InlineData("For 30 mm of thread.", 0)]
    [InlineData("Wait for 2 people.", 0)]
    public void A_text_gives_a_time(string text, double seconds) => Assert.Equal(seconds, SaidTime.Seconds(text));

    [Theory]
    [InlineData("task \"Wait 10 minutes.\"", 600)]
    [InlineData("task \"Wait 10 minutes.\" { time 12 min }", 720)]
    [InlineData("task \"Tap it.\" { how \"Hold for 5 min.\"  check \"Wait 5 min. It stays dry.\" }", 600)]
    [InlineData("check \"Vacuum lost in 10 min, pump off\"", 600)]
    [InlineData("measure \"Body temperature after 10 min\" expect <= 60 °C", 600)]
    [InlineData("undo lid_bolts { how \"Wait 2 min after each.\" }", 40 + 120)]
    [InlineData("task \"Heat the hub to 80 °C.\"", 120 + 600)]
    [InlineData("task \"Heat the hub for 4 min.\"", 240)]
    [InlineData("task \"Spread heat-conducting paste.\"", 120)]
    [InlineData("task \"Evacuate, then charge by weight.\"", 120 + 1800 + 600)]
    [InlineData("remove load { hoist }", 600)]
    [InlineData("remove load { hoist  time 20 min }", 1200)]
    [InlineData("task \"Tap it.\"", 120)]
    public void A_step_takes_what_is_said_or_what_is_usual(string step, double seconds) => Assert.Equal(seconds, First(step).Seconds);

    [Fact]
    public void A_wait_of_the_machine_counts_once_with_the_text_that_repeats_it()
    {
        Assert.Equal(30 + 600, First("isolate mains", "wait 10 min  bleed \"Wait 10 min.\"").Seconds);
        Assert.Equal(30 + 600, First("isolate mains", "wait 5 min  bleed \"Wait 10 min.\"").Seconds);
        Assert.Equal(30 + 600, First("isolate mains", "bleed \"Wait 10 min.\"").Seconds);
        Assert.Equal(30 + 600, First("isolate mains", "wait 10 min  danger \"It holds a charge. Wait 10 min.\"").Seconds);
    }

    [Fact]
    public void A_cure_counts_once_with_the_text_that_repeats_it()
    {
        var plan = Of("cut lid_seal { refit { how \"Let it cure for 30 min.\" } }");

        Assert.Equal(20 + 1800, plan.Step("Renew 1 × seal").Seconds);
    }

    [Fact]
    public void A_wait_in_an_alert_counts_once_where_it_stands_first()
    {
        var plan = Of("undo lid_bolts  remove lid  undo motor_bolts", part: "caution \"It burns. Let it cool for 30 min.\"");

        Assert.Equal([40 + 1800, 30], plan.Strip[0].Steps.Take(2).Select(step => step.Seconds));
        Assert.Equal(1800 + 40 + 30 + 40, plan.Times.Strip);
        Assert.Equal(40 + 30 + 40, plan.Times.Refit);
    }

    [Fact]
    public void What_runs_in_the_background_holds_nobody_for_what_its_text_says()
    {
        var plan = Of("task \"Let it soak for 30 min.\" in background  undo lid_bolts");

        Assert.Equal(1800, plan.Strip[0].Steps[0].Seconds);
        Assert.Equal(60 + 40 + 40, plan.Times.Usual);
        Assert.Equal(1800, plan.Times.OnePerson);
    }

    [Fact]
    public void Cover_estimate_and_cards_agree_on_who_is_needed()
    {
        var plan = Of("undo lid_bolts { people 3 }  undo motor_bolts");

        Assert.Equal(3, plan.People);
        Assert.Equal(3, plan.Times.CrewSize);
        Assert.Equal(plan.AllSteps().Where(step => step.People > 1).Select(step => step.Number), plan.SharedSteps);
        Assert.Equal(plan.People, plan.AllSteps().Max(step => step.People));
    }

    [Fact]
    public void A_lift_that_takes_the_people_of_the_job_takes_them_in_the_estimate_too()
    {
        var plan = PlanOf.Text("""
            machine rig "Rig" { part block "block" { mass 40 kg } }
            procedure p "P" on rig { people 2  stage "S" { remove block } }
            """);

        Assert.Equal([1, 2], plan.SharedSteps);
        Assert.Equal(2, plan.Times.CrewSize);
        Assert.Equal(plan.Times.OnePerson, plan.Times.Crew);
    }

    private static PlanStep First(string steps, string energy = "") => Of(steps, energy).AllSteps()[0];

    private static Plan Of(string steps, string energy = "", string part = "") => PlanOf.Text($$"""
        supply glue "glue" { cure 30 min }
        fastener bolt "bolt" { }
        bond seal "seal" { uses 1 mL of glue }
        machine rig "Rig" {
          energy mains "mains" { isolate "Off."  restore "On."  {{energy}} }
          part lid "lid" { {{part}} held by 5 bolt as lid_bolts }
          part face "face" { held by 1 seal as lid_seal }
          part load "load"
          part motor "motor" { held by 5 bolt as motor_bolts }
        }
        procedure p "P" on rig { stage "S" { {{steps}} } }
        """);
}
