using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans;

namespace ProcScript.Analysis.Tests.Plans;

/// <summary>Which warning stands before which step.</summary>
public sealed class CardWarningTests
{
    private const string Catalog = """
        tool key "key"
        fastener bolt "bolt" { drive key }
        clip pin "pin"
        clip cap "cap"
        clip strut "strut clip" { hazard spring }
        connector plug_2 "plug"
        connector squib "squib" { hazard restraint }
        line hose "hose" { tool key }

        """;

    [Fact]
    public void A_warning_of_a_part_stands_before_what_covers_what_holds_it()
    {
        var plan = Plan("""
            part lid "lid" { warning "Lid."  held by 2 bolt as lid_bolts covered by 2 cap as lid_caps }
            """, "release lid_caps  undo lid_bolts  remove lid");

        Assert.Equal(["release lid_caps: Lid."], Told(plan.Strip[0]));
        Assert.Equal(["fit lid: Lid."], Told(plan.Refit[0]));
    }

    [Fact]
    public void A_part_is_touched_where_another_is_tied_to_it_and_where_it_is_let_go_aside()
    {
        var plan = Plan("""
            part frame "frame" { caution "Frame." }
            part arm "arm" { held by 1 pin as arm_pin to frame  wired by 1 plug_2 as arm_plug }
            part flap "flap" { notice "Flap."  aside "Tip it." needs arm_plug off }
            """, "unplug arm_plug  release arm_pin  remove arm");

        Assert.Equal(["unplug arm_plug: Flap.", "release arm_pin: Frame.", "remove arm: "], plan.Strip[0].Steps.Select(Words));
        var own = Plan("""
            part flap "flap" { notice "Flap."  held by 1 bolt as flap_bolt  aside "Tip it." needs flap_bolt }
            """, "loosen flap_bolt  aside flap");
        Assert.Equal(["loosen flap_bolt: Flap."], Told(own.Strip[0]));
    }

    [Fact]
    public void What_nothing_touches_warns_of_nothing()
    {
        var plan = Plan("""
            part lid "lid" { held by 2 bolt as lid_bolts }
            part spring_box "spring box" { hazard spring  danger "Box."  held by 1 bolt as box_bolt }
            """, "undo lid_bolts  remove lid");

        Assert.Empty(plan.AllSteps().SelectMany(step => step.Alerts));
        Assert.Empty(plan.Hazards);
    }

    [Fact]
    public void At_a_joint_on_an_energy_only_what_can_kill_or_maim_is_told()
    {
        var plan = PlanOf.Text(Catalog + """
            machine m "M" {
              energy mains "supply" { danger "Danger."  warning "Warning."  caution "Caution."  notice "Notice."  isolate "Off."  restore "On." }
              part lamp "lamp" { wired by 1 plug_2 as lamp_plug { on mains } }
            }
            procedure p "P" on m { stage "Off" { isolate mains }  stage "Lamp" { unplug lamp_plug  remove lamp } }
            """);

        Assert.Equal(["isolate mains: Danger. Warning. Caution. Notice."], Told(plan.Strip[0]));
        Assert.Equal(["unplug lamp_plug: Danger. Warning."], Told(plan.Strip[1]));
        Assert.Equal(["plug lamp_plug: Danger. Warning."], Told(plan.Refit[0]));
        Assert.Equal(["restore mains: Danger. Warning. Caution. Notice."], Told(plan.Refit[1]));
    }

    [Fact]
    public void A_control_that_lets_it_out_comes_after_the_warning()
    {
        var plan = PlanOf.Text(Catalog + """
            machine m "M" {
              control tap "tap" { closed, open, half }
              control brew "brew button" { off, on  needs inlet full }
              energy steam "steam" { strip needs tap at open  caution "Steam."  isolate "Let it off."  restore "Heat up." }
              fluid inlet "inlet water" { notice "Water."  empty "Out."  fill "In." }
              part lamp "lamp" { }
            }
            procedure p "P" on m {
              stage "A" { set tap to half }
              stage "B" { set tap to open }
              stage "C" { set brew to on  isolate steam  remove lamp }
            }
            """);

        Assert.Empty(Told(plan.Strip[0]));
        Assert.Equal(["set tap: Steam."], Told(plan.Strip[1]));
        Assert.Equal(["set brew: Water.", "isolate steam: Steam."], Told(plan.Strip[2]));
    }

    /// <summary>A spanner across the posts is no matter of the key, nor is a hot motor one of its brake.</summary>
    [Fact]
    public void What_no_control_lets_out_is_not_told_over_its_knob()
    {
        var plan = PlanOf.Text(Catalog + """
            machine m "M" {
              control key "key" { off, on }
              control brake "brake" { on, off }
              control mode "climate mode" { off, heat  needs battery live, key at on }
              energy battery "12 V battery" { needs key at off  warning "Short."  caution "Spanner."  isolate "Off."  restore "On." }
              energy oil "oil pressure" { needs key at off  warning "Jet."  isolate "Off."  restore "On." }
              fluid coolant "coolant" { needs mode at heat  warning "Scald."  empty "Out."  fill "In." }
              part wheel "wheel" { hazard hot_surface  needs brake at off  caution "Sharp." }
            }
            procedure p "P" on m {
              stage "A" { set key to on  set mode to heat  set key to off  empty coolant  isolate oil  isolate battery  set brake to off  remove wheel }
            }
            """);

        Assert.Equal(
            ["empty coolant: Scald.", "isolate oil: Jet.", "isolate battery: Short. Spanner.", "remove wheel: Sharp. Hot enough to burn. Let it cool before you touch it."],
            Told(plan.Strip[0]));
    }

    [Fact]
    public void What_is_hot_at_the_other_end_of_a_lead_burns_nobody()
    {
        var plan = Plan("""
            part motor "motor" { hazard hot_surface  held by 1 bolt as motor_bolt }
            part box "box" { wired by 1 plug_2 as motor_plug to motor covered by 1 cap as plug_cap }
            """, "release plug_cap  unplug motor_plug  undo motor_bolt  remove motor");

        Assert.Equal(["undo motor_bolt"], Usual(plan.Strip[0]));
    }

    [Fact]
    public void What_a_caution_says_to_wear_is_worn_at_each_step_under_it_and_stands_in_the_list()
    {
        Plan Of(string ppe) => Plan($$"""
            part hatch "hatch" { hazard spring  held by 2 bolt as hatch_bolts {{{ppe}}} }
            part lid "lid" { held by 1 bolt as lid_bolt }
            """, "undo hatch_bolts  undo lid_bolt  remove hatch");

        var plan = Of("");
        Assert.Equal(["undo hatch_bolts", "remove hatch", "fit hatch", "fasten hatch_bolts"], Worn(plan, "eye protection"));
        Assert.Equal(["eye protection"], plan.Ppe);
        // The author's own word for it, at every step that takes one.
        var named = Of("ppe \"safety glasses\"");
        Assert.Equal(["undo hatch_bolts", "remove hatch", "fit hatch", "fasten hatch_bolts"], Worn(named, "safety glasses"));
        Assert.Equal(["safety glasses"], named.Ppe);
    }

    private static IEnumerable<string> Worn(Plan plan, string item) =>
        plan.AllSteps().Where(step => step.Ppe.Contains(item)).Select(step => $"{step.Verb} {step.Item}");

    [Fact]
    public void A_warning_stands_once_a_card_and_work_counts()
    {
        var plan = PlanOf.Text(Catalog + """
            machine m "M" { part lid "lid" { warning "Lid."  held by 2 bolt as lid_bolts } }
            procedure p "P" on m {
              stage "A" { undo 1 of lid_bolts  inspect lid_bolts }
              stage "B" { undo rest of lid_bolts  remove lid }
              work { task "Look."  clean lid  inspect lid }
            }
            """);

        Assert.Equal(["undo lid_bolts: Lid."], Told(plan.Strip[0]));
        Assert.Equal(["undo lid_bolts: Lid."], Told(plan.Strip[1]));
        Assert.Equal(["clean lid: Lid."], Told(plan.Work));
        Assert.Equal(["fit lid: Lid."], Told(plan.Refit[0]));
        Assert.Equal(["fasten lid_bolts: Lid."], Told(plan.Refit[1]));
    }

    [Fact]
    public void What_is_marked_stands_one_way_only()
    {
        var plan = Plan("""
            part lid "lid" { strip warning "Item off."  refit caution "Item on."  held by 2 bolt as lid_bolts }
            """, """
            strip danger "Before off."
            refit notice "Before on."
            warning "Both."
            undo lid_bolts { strip notice "Block off."  refit warning "Block on."  refit { notice "Refit block." } }
            remove lid
            """);

        Assert.Equal(["undo lid_bolts: Before off. Item off. Both. Block off."], Told(plan.Strip[0]));
        Assert.Equal(["fit lid: Item on.", "fasten lid_bolts: Block on. Both. Before on. Refit block."], Told(plan.Refit[0]));
    }

    [Fact]
    public void The_work_belongs_to_taking_off()
    {
        var plan = PlanOf.Text(Catalog + """
            machine m "M" { part lid "lid" { strip warning "Off."  refit warning "On." } }
            procedure p "P" on m { stage "A" { remove lid }  work { clean lid } }
            """);

        Assert.Equal(["clean lid: Off."], Told(plan.Work));
    }

    [Fact]
    public void The_same_text_stands_once_a_card_but_where_the_author_wrote_it_again()
    {
        var plan = Plan("""
            part lid "lid" { warning "Sharp."  held by 1 bolt as lid_bolt }
            part cap "cap" { caution "Sharp." }
            """, """
            undo lid_bolt
            warning "Sharp."
            remove lid
            caution "Sharp."
            remove cap
            """);

        Assert.Equal(["undo lid_bolt: Sharp.", "remove lid: Sharp.", "remove cap: Sharp."], Told(plan.Strip[0]));
        // On the way back the first is enough for what follows; but the caution of the cap comes first there, and a warning is more than that.
        Assert.Equal(["fit cap: Sharp.", "fit lid: Sharp."], Told(plan.Refit[0]));
    }

    [Fact]
    public void The_alerts_of_a_strip_stand_before_the_first_of_what_undoes_it()
    {
        var plan = PlanOf.Text(Catalog + """
            machine m "M" { part lid "lid" { held by 2 bolt as lid_bolts  held by 1 pin as lid_pin } }
            procedure p "P" on m {
              stage "Lid" { warning "Whole."  refit caution "Back."  strip lid { notice "Block."  refit { notice "Refit." } } }
            }
            """);

        Assert.Equal("Whole. Block.", Texts(plan.Strip[0].Steps[0]));
        Assert.Single(Told(plan.Strip[0]));
        Assert.Equal(["fit lid: Whole. Back. Refit. Block."], Told(plan.Refit[0]));
    }

    [Fact]
    public void A_usual_caution_has_a_text_for_each_way()
    {
        var plan = Plan("""
            part hatch "hatch" { hazard suspended_load  held by 2 bolt as hatch_bolts }
            """, "support hatch  undo hatch_bolts  remove hatch");

        var off = Assert.Single(plan.Strip[0].Steps.SelectMany(step => step.Alerts));
        var on = Assert.Single(plan.Refit[0].Steps.SelectMany(step => step.Alerts));
        Assert.Contains("before the last of what holds it comes off", off.Text, StringComparison.Ordinal);
        Assert.Contains("until everything that holds it is closed", on.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Making_safe_is_not_told_on_the_way_back()
    {
        var plan = PlanOf.Text(Catalog + """
            machine m "M" {
              energy gas "gas supply" { hazard pressure  isolate "Shut."  bleed "Burn it off."  verify "Out."  restore "Open." }
              part lamp "lamp" { }
            }
            procedure p "P" on m { stage "A" { isolate gas  remove lamp } }
            """);

        Assert.Contains("Let it off", Texts(plan.Strip[0].Steps[0]), StringComparison.Ordinal);
        Assert.DoesNotContain("Let it off", Texts(plan.Refit[0].Steps[^1]), StringComparison.Ordinal);
        Assert.Contains("slowly", Texts(plan.Refit[0].Steps[^1]), StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_hot_is_cold_on_the_way_back_until_there_is_power()
    {
        const string Machine = """
            energy mains "supply" { isolate "Off."  restore "On." }
            part core "core" { hazard hot_surface  held by 1 bolt as core_bolt }
            """;

        var before = Plan(Machine, "isolate mains  undo core_bolt  remove core");
        var after = Plan(Machine, "undo core_bolt  remove core  isolate mains");

        Assert.Equal(["undo core_bolt"], Usual(before.Strip[0]));
        Assert.Empty(Usual(before.Refit[0]));
        Assert.Equal(["fit core"], Usual(after.Refit[0]));
    }

    [Fact]
    public void An_authors_alert_is_enough_where_it_is_as_strong_and_of_the_same_thing()
    {
        const string Job = "undo bar_bolts  undo pack_bolt  remove pack";
        const string Bar = "part bar \"bar\" { {0}  held by 2 bolt as bar_bolts }\npart pack \"pack\" { hazard spring  {1}  held by 1 bolt as pack_bolt }";
        Plan Of(string bar, string pack) => Plan(Bar.Replace("{0}", bar, StringComparison.Ordinal).Replace("{1}", pack, StringComparison.Ordinal), Job);

        Assert.Equal(["undo pack_bolt"], Usual(Of("", "").Strip[0]));
        Assert.Empty(Usual(Of("", "warning \"The spring flies.\"").Strip[0]));
        Assert.Equal(["undo pack_bolt"], Usual(Of("", "caution \"The spring flies.\"").Strip[0]));
        Assert.Equal(["undo pack_bolt"], Usual(Of("warning \"Its spring bites.\"", "").Strip[0]));
        Assert.Empty(Usual(Of("hazard spring  warning \"Its spring bites.\"", "").Strip[0]));
        Assert.Equal(["undo bar_bolts"], Usual(Of("hazard spring  warning \"Offspring.\"", "").Strip[0]));
    }

    [Fact]
    public void A_battery_is_not_the_mains()
    {
        var plan = PlanOf.Text(Catalog + """
            machine m "M" {
              energy traction "traction battery" { hazard high_voltage  danger "400 volts kill."  isolate "Off."  restore "On." }
              energy mains "three-phase mains" { hazard high_voltage  isolate "Off."  restore "On." }
              part inverter "inverter" { hazard high_voltage  wired by 1 plug_2 as in_plug on mains }
              part box "box" { hazard high_voltage }
            }
            procedure p "P" on m { stage "A" { isolate traction  isolate mains  unplug in_plug  remove inverter  remove box } }
            """);

        var usual = plan.Strip[0].Steps.SelectMany(step => step.Alerts.Where(alert => alert.IsUsual).Select(alert => (step.Item, alert.Text))).ToList();
        Assert.Equal(["mains", "box"], usual.Select(one => one.Item));
        Assert.StartsWith("Mains voltage kills.", usual[0].Text, StringComparison.Ordinal);
        Assert.DoesNotContain("plug", usual[1].Text, StringComparison.Ordinal);
    }

    /// <summary>What the mains carry is no high voltage in any language; what a vehicle's battery carries has a name of its own there.</summary>
    [Theory]
    [InlineData("230 V mains", "mains voltage", "Netzspannung")]
    [InlineData("400 V traction battery", "high voltage", "Hochvolt")]
    [InlineData("400 V bus", "dangerous voltage", "gefährliche Spannung")]
    public void A_voltage_is_called_what_it_is(string title, string english, string german)
    {
        var plan = PlanOf.Text(Catalog + $$"""
            machine m "M" { energy e "{{title}}" { hazard high_voltage  isolate "Off."  restore "On." }  part x "x" { needs e isolated } }
            procedure p "P" on m { stage "A" { isolate e  remove x } }
            """);
        var caution = Analysis.Plans.Words.UsualCautions.ForLettingGo(
            Model.Machines.Hazard.HighVoltage,
            Checked.Text(Catalog + $"machine m \"M\" {{ energy e \"{title}\" {{ hazard high_voltage  isolate \"Off.\"  restore \"On.\" }} }}\nprocedure p \"P\" on m {{ stage \"A\" {{ isolate e }} }}\n").Only.Procedure.Machine.Energies[0]);

        Assert.Equal(english, Assert.Single(plan.Hazards).Title);
        Assert.Equal(german, caution.Title(Wordbook.In(PackLanguage.German)));
        Assert.All(PackLanguages.All.Select(Wordbook.In), book => Assert.DoesNotContain("Hochspannung", caution.Text(book) + book.Say("cover.high-voltage") + book.Say("cover.licensed"), StringComparison.Ordinal));
    }

    [Fact]
    public void Every_usual_caution_has_a_fitting_word_and_two_texts()
    {
        var item = PlanItem();
        foreach (var hazard in Enum.GetValues<Model.Machines.Hazard>())
        {
            var (off, on) = (Analysis.Plans.Words.UsualCautions.ForLettingGo(hazard, item), Analysis.Plans.Words.UsualCautions.ForPuttingBack(hazard, item));

            Assert.NotEqual(off.Text(Wordbook.English), on.Text(Wordbook.English));
            Assert.All([off, on], caution => Assert.True(caution.Text(Wordbook.English).Length > 40));
            Assert.Equal(hazard == Model.Machines.Hazard.Static, off.Word == Model.Procedures.SignalWord.Notice);
            Assert.Equal(hazard == Model.Machines.Hazard.HighVoltage, off.Word == Model.Procedures.SignalWord.Danger);
            Assert.Equal(hazard == Model.Machines.Hazard.HotSurface, off.Word == Model.Procedures.SignalWord.Caution);
        }
    }

    private static Model.Machines.MachineItem PlanItem() =>
        Checked.Text(Catalog + "machine m \"M\" { part x \"x\" { } }\nprocedure p \"P\" on m { stage \"A\" { remove x } }").Only.Procedure.Machine.Parts[0];

    private static Plan Plan(string members, string steps) =>
        PlanOf.Text($"{Catalog}machine m \"M\" {{\n{members}\n}}\nprocedure p \"P\" on m {{ stage \"A\" {{ {steps} }} }}\n");

    private static IEnumerable<string> Told(PlanStage card) => card.Steps.Where(step => !step.Alerts.IsEmpty).Select(Words);

    private static IEnumerable<string> Usual(PlanStage card) =>
        card.Steps.Where(step => step.Alerts.Any(alert => alert.IsUsual)).Select(step => $"{step.Verb} {step.Item}");

    private static string Words(PlanStep step) => $"{step.Verb} {step.Item}: {Texts(step)}";

    private static string Texts(PlanStep step) => string.Join(' ', step.Alerts.Select(alert => alert.Text));
}
