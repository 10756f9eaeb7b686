namespace ProcScript.Analysis.Tests.Settings;

/// <summary>Each limit changes what its rules say, and nothing else does.</summary>
public sealed class ChosenLimitTests
{
    private const string Lift = """
        machine press "Press" { part motor "motor" { mass 21 kg } }
        procedure motor_off "Take the motor off" on press { stage "Motor" { remove motor } }
        """;

    private const string Torque = """
        tool socket_13 "13 mm socket" { size 13 mm }
        fastener m8x25 "M8 × 25 bolt" { thread M8x1.25  grade 8.8  drive socket_13  torque 22 ± 2 N.m }
        """;

    private const string Sentence = """clip pin "push pin" { release "Put the flat end of the lever under the head." }""";

    private const string Restraint = """
        connector squib "squib connector" { hazard restraint }
        machine cab "Cab" {
          energy battery "12 V battery" {
            hazard restraint
            isolate "Take the negative cable off."
            lock    "Cover the post."
            wait    90 s
            verify  "The dome lamp stays dark."
            restore "Refit the cable."
          }
        }
        """;

    private const string Voltage = """
        machine trike "Trike" {
          energy traction "400 V traction battery" {
            hazard  high_voltage
            isolate "Pull the service plug."
            lock    "Keep the service plug on your person."
            wait    10 min
            verify  "Measure at both poles." expect <= 50 V
            restore "Push the service plug home."
          }
        }
        """;

    private const string Mains = """
        machine lathe "Lathe" {
          energy mains "400 V three-phase mains" {
            hazard  high_voltage
            isolate "Turn the isolator off."
            lock    "Hang your lock on it."
            wait    10 s
            verify  "Measure each phase to each other." expect <= 25 V
            restore "Take your lock off. Turn it on."
          }
        }
        """;

    private const string Cure = """
        tool knife "sealant knife"
        bond sealant "sealant" { tool knife  cure 10 min }
        machine press "Press" { part guard "guard" { held by 1 sealant as guard_seal } }
        procedure guard_off "Take the guard off" on press { stage "Guard" { cut guard_seal  remove guard } }
        """;

    private const string Alert = """
        machine press "Press" {
          energy mains "mains" {
            warning "Mains can kill. Pull the plug. Keep it in sight."
            isolate "Pull the plug."
            verify  "Press the switch: it stays still."
            restore "Put the plug in."
          }
        }
        """;

    [Theory]
    [InlineData(Lift, "\"onePersonMass\": \"20 kg\"", "PRC5061")]
    [InlineData(Torque, "\"strongTorque\": \"60 %\"", "PRC5010")]
    [InlineData(Torque, "\"weakTorque\": \"75 %\"", "PRC5011")]
    [InlineData(Sentence, "\"instructionWords\": 5", "PRC5092")]
    [InlineData(Restraint, "\"restraintWait\": \"2 min\"", "PRC5042")]
    [InlineData(Voltage, "\"safeVoltage\": \"48 V\"", "PRC5044")]
    [InlineData(Voltage, "\"highVoltageWait\": \"15 min\"", "PRC5044")]
    [InlineData(Mains, "\"safeVoltageAlternating\": \"20 V\"", "PRC5044")]
    [InlineData(Cure, "\"cureWait\": \"5 min\"", "PRC5033")]
    [InlineData(Alert, "\"descriptionWords\": 5, \"paragraphSentences\": 2", "PRC5093")]
    public void A_tighter_limit_finds_more(string text, string limit, string code)
    {
        // What the rules of the whole library miss in such a short one is not the matter here.
        const string Quiet = "\"severities\": { \"PRC6xxx\": \"off\" }";
        var file = $$"""{ {{Quiet}}, "limits": { {{limit}} } }""";

        Assert.Equal([], Checked.Text(text).Codes);
        Assert.Equal([code], Checked.Files(("x.proc", text), ("procscript.json", file)).Codes);
        Assert.Equal([], Checked.Files(("x.proc", text), ("procscript.json", $$"""{ {{Quiet}}, "overrides": [{ "paths": "y.proc", "limits": { {{limit}} } }] }""")).Codes);
        Assert.Equal([code], Checked.Files(("x.proc", text), ("procscript.json", $$"""{ {{Quiet}}, "overrides": [{ "paths": "x.proc", "limits": { {{limit}} } }] }""")).Codes);
    }

    [Fact]
    public void A_rule_that_is_off_says_nothing_and_leaves_comments_on_it_alone()
    {
        const string Allowed = """
            // proc: allow PRC5092 because "Once it was longer."
            clip pin "push pin" { release "Lift." }
            """;
        const string Bare = """
            // proc: allow PRC5092
            clip pin "push pin" { release "Put the flat end of the plastic trim lever under the head of the pin that sits in the corner next to the lamp." }
            """;
        const string Off = """{ "severities": { "long-sentence": "off", "PRC6xxx": "off" } }""";

        Assert.Equal(["PRC7002"], Checked.Text(Allowed).Codes);
        Assert.Equal([], Checked.Files(("x.proc", Allowed), ("procscript.json", Off)).Codes);
        Assert.Equal(["PRC7001"], Checked.Text(Bare).Codes);
        var off = Checked.Files(("x.proc", Bare), ("procscript.json", Off));
        Assert.Empty(off.Report.Silenced);
    }

    [Fact]
    public void Findings_weigh_what_is_chosen_and_procedures_are_proven_all_the_same()
    {
        var text = Lift.Replace("21", "40", StringComparison.Ordinal);
        var report = Checked.Files(("x.proc", text), ("procscript.json", """{ "severities": { "PRC5xxx": "error", "PRC6xxx": "off" } }""")).Report;

        Assert.All(report.Findings, finding => Assert.Equal(Syntax.Findings.Severity.Error, finding.Severity));
        Assert.NotEmpty(report.Findings);
        Assert.All(report.Procedures, procedure => Assert.True(procedure.IsProven));
    }

    [Fact]
    public void Cards_give_a_torque_in_the_unit_of_the_shop_first()
    {
        const string Text = """
            tool socket_13 "13 mm socket" { size 13 mm }
            fastener m8x25 "M8 × 25 bolt" { drive socket_13  torque 22 ± 2 N.m }
            machine press "Press" { part guard "guard" { held by 4 m8x25 as guard_bolts } }
            procedure guard_off "Take the guard off" on press { stage "Guard" { undo guard_bolts  remove guard } }
            """;
        var bare = Checked.Text(Text).Only.CreatePlan()!;
        var chosen = Checked.Files(("x.proc", Text), ("procscript.json", """{ "units": { "torque": "lbf.ft" } }""")).Only.CreatePlan()!;

        var written = Checked.Files(("x.proc", Text.Replace("22 ± 2 N.m", "16 lbf.ft", StringComparison.Ordinal))).Only.CreatePlan()!;

        Assert.Contains("16 lbf·ft (21.7 N·m)", written.Refit[0].Steps.Select(step => step.Torque));
        Assert.Contains("torque wrench, 16 lbf·ft", written.Tools.Select(tool => tool.Title));

        // 22 N·m / 1.355 818 N·m (NIST SP 811 App. B.8) = 16.23 lbf·ft.
        Assert.Contains("22 ± 2 N·m (16.2 ± 1.5 lbf·ft)", bare.Refit[0].Steps.Select(step => step.Torque));
        Assert.Contains("16.2 ± 1.5 lbf·ft (22 ± 2 N·m)", chosen.Refit[0].Steps.Select(step => step.Torque));
        Assert.Contains("torque wrench, 22 N·m", bare.Tools.Select(tool => tool.Title));
        Assert.Contains("torque wrench, 16.2 lbf·ft", chosen.Tools.Select(tool => tool.Title));
    }

    [Theory]
    [InlineData("socket_13")]
    [InlineData("13 MM Socket")]
    public void What_every_bench_has_stands_last_in_the_list_and_is_told_as_such(string tool)
    {
        const string Text = """
            tool socket_13 "13 mm socket" { size 13 mm }
            tool lever "lever"
            fastener m8x25 "M8 × 25 bolt" { drive socket_13 }
            clip pin "pin" { tool lever }
            machine press "Press" { part guard "guard" { held by 4 m8x25 as guard_bolts  held by 1 pin as guard_pin } }
            procedure guard_off "Take the guard off" on press { stage "Guard" { undo guard_bolts  release guard_pin  remove guard } }
            """;
        var bare = Checked.Text(Text).Only.CreatePlan()!;
        var plan = Checked.Files(("x.proc", Text), ("procscript.json", $$"""{ "houseTools": ["{{tool}}"] }""")).Only.CreatePlan()!;

        Assert.Equal(["13 mm socket", "lever"], bare.Tools.Select(one => one.Title));
        Assert.Equal([("lever", false), ("13 mm socket", true)], plan.Tools.Select(one => (one.Title, one.OfHouse)));
        Assert.Equal(bare.Strip[0].Steps[0].Tools, plan.Strip[0].Steps[0].Tools);
    }
}
