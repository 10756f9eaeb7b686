using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;

namespace ProcScript.Model.Tests.Binding;

/// <summary>Energies, where they are proved to be off, and what is done while they are live again.</summary>
public sealed class PowerTests
{
    private const string Kinds = """
        tool meter "multimeter"
        clip pin "pin"

        """;

    private const string Box = Kinds + """
        machine box "box" {
          option lamp "lamp"
          energy mains "mains" { isolate "i"  restore "r" }
          energy air "air" { isolate "i"  restore "r"  after mains }
          control lever "lever" { up, down }
          part lid "lid" { held by 2 pin as pins }
          each side in left, right { part foot[side] "{side} foot" { held by 1 pin as foot_pin[side] } }
        }

        """;

    private const string Anchor = "stage \"s\" { isolate mains  remove lid }";

    [Theory]
    [InlineData("verify \"v\"", null)]
    [InlineData("verify \"v\" at posts expect <= 5 V", "posts posts; ; ≤ 5 V")]
    [InlineData("verify \"v\" at lid", "lid lid; ; ")]
    [InlineData("verify \"v\" at lever { needs lever at down }", "lever lever; lever Position; ")]
    [InlineData("verify \"v\" at \"the bar\" { behind lid, box_lid  tool meter }", " the bar; lid OutOfTheWay, box_lid OutOfTheWay, meter; ")]
    [InlineData("verify \"v\" expect 0 V { behind lid  needs posts off }", " ; lid OutOfTheWay, posts Off; 0 V")]
    public void Where_an_energy_is_proved_to_be_off_is_bound(string verify, string? told)
    {
        var energy = Energy(verify);
        var place = energy.VerifyAt;

        Assert.Equal("v", energy.Verify);
        Assert.Equal(
            told,
            place is null
                ? null
                : $"{place.Item?.Name} {place.Words}; "
                    + string.Join(", ", place.Conditions.Select(condition => $"{condition.Item.Name} {condition.State}").Concat(place.Tools.Select(tool => tool.Name)))
                    + $"; {energy.VerifyExpect?.Print()}");
    }

    [Theory]
    [InlineData("verify \"v\" at mains", "PRC1103 `mains` is an energy, not a joint, a part or a control")]
    [InlineData("verify \"v\" at post", "PRC1101 the machine `box` has nothing called `post`")]
    [InlineData("verify \"v\" { mass 3 kg }", "PRC1111 `mass` does not belong in the verify of an energy")]
    [InlineData("voltage 400 L", "PRC1202 `voltage` takes a voltage, and `L` is a volume")]
    [InlineData("verify \"v\"  verify \"w\"", "PRC1112 `verify` is given twice")]
    public void What_cannot_stand_there_is_found(string property, string finding) =>
        Assert.Equal([finding], Machine(property).Words());

    [Theory]
    [InlineData("", null, CurrentKind.Unknown)]
    [InlineData("voltage 400 V ac", "400 V", CurrentKind.Alternating)]
    [InlineData("voltage 36 V dc", "36 V", CurrentKind.Direct)]
    [InlineData("voltage 0.5 kV", "0.5 kV", CurrentKind.Unknown)]
    public void A_voltage_says_which_sort_of_current_it_drives(string property, string? voltage, CurrentKind current)
    {
        var energy = Energy(property);

        Assert.Equal((voltage, current), (energy.Voltage?.Print(), energy.Current));
    }

    [Fact]
    public void A_test_has_its_energies_its_steps_with_their_alerts_and_what_is_open()
    {
        var rule = Assert.IsType<TestRule>(Assert.Single(Rules("""
            warning "Clear."
            test "Runs" after fit lid {
              power air, mains, air
              check "Lights." expect 2 .. 3 A needs lever at down
              caution "Turns."
              task "Wait." in background { time 5 min }
              while pins, foot[left] open because "Capped."
              while pins open because "Seen."
            }
            """)));

        Assert.Equal("Runs", rule.Title);
        Assert.Equal(["air", "mains"], rule.Powered.Select(energy => energy.Name));
        Assert.Equal(["air", "mains"], rule.InOrderOfReturn().Select(energy => energy.Name));
        Assert.Equal("Clear.", Assert.Single(rule.Alerts).Text);
        Assert.Equal([(Verb.Check, "Lights.", ""), (Verb.Task, "Wait.", "Turns.")], rule.Steps.Select(step => (step.Verb, step.Text, string.Concat(step.Alerts.Select(alert => alert.Text)))));
        Assert.Equal(("2 to 3 A", NeededState.Position, true), (rule.Steps[0].Expect!.Print(), rule.Steps[0].Conditions[0].State, rule.Steps[1].InBackground));
        Assert.Equal(["pins Capped.", "foot[left] Capped.", "pins Seen."], rule.Open.Select(open => $"{open.Item.Name} {open.Because}"));
        Assert.Equal((null, Verb.Fit, "lid"), (rule.Before, rule.After!.Verb, rule.After.Target.Name));
    }

    [Fact]
    public void An_energy_that_is_isolated_after_another_comes_back_before_it_whichever_is_named_first()
    {
        var rules = Rules("test \"a\" { power mains, air  check \"c\" }  test \"b\" { power air, mains  check \"c\" }");

        Assert.All(rules.Cast<TestRule>(), rule => Assert.Equal(["air", "mains"], rule.InOrderOfReturn().Select(energy => energy.Name)));
    }

    [Fact]
    public void A_test_stands_before_an_action_or_nowhere_in_particular()
    {
        var rules = Rules("test \"a\" before fit lid { power mains  check \"c\" }  test \"b\" { power mains  check \"c\" }").Cast<TestRule>().ToList();

        Assert.Equal(["lid", null], rules.Select(rule => rule.Before?.Target.Name));
        Assert.All(rules, rule => Assert.Null(rule.After));
    }

    [Fact]
    public void Loops_conditions_and_calls_bring_tests_and_what_may_be_open()
    {
        var library = Samples.Bind(Box + $$"""
            procedure one "one" on box {
              {{Anchor}}
              refit {
                each side in left, right { test "{side}" { power mains  check "{side} runs"  while foot_pin[side] open because "{side} is seen" } }
                when lamp { restore mains while lid open because "lit" }
              }
            }
            procedure all "all" on box { do one }
            """);
        Assert.Empty(library.Words());
        string Told(Procedure procedure) => string.Join("; ", procedure.Rules.Select(rule => rule switch
        {
            TestRule test => $"{test.Title}: {test.Steps[0].Text}, {test.Open[0].Item.Name} {test.Open[0].Because} {test.Calls.Length} {test.Steps[0].Calls.Length}",
            OpenRule open => $"{open.Action.Verb} {open.Action.Target.Name} {open.Open[0].Item.Name} {open.Open[0].Because} {open.Calls.Length}",
            _ => "",
        }));

        const string Tests = "left: left runs, foot_pin[left] left is seen {0} {0}; right: right runs, foot_pin[right] right is seen {0} {0}";
        Assert.Equal(
            [
                string.Format(null, Tests, 0),
                string.Format(null, Tests, 1),
                string.Format(null, Tests, 0) + "; Restore mains lid lit 0",
                string.Format(null, Tests, 1) + "; Restore mains lid lit 1",
            ],
            library.Procedures.OrderBy(procedure => procedure.Machine.With.Length).ThenByDescending(procedure => procedure.Name).Select(Told));
    }

    [Fact]
    public void What_may_be_open_when_an_energy_comes_back_is_bound_and_may_be_named_twice()
    {
        var rule = Assert.IsType<OpenRule>(Assert.Single(Rules("restore mains while lid, pins, lid open because \"Seen.\"")));

        Assert.Equal((Verb.Restore, "mains"), (rule.Action.Verb, rule.Action.Target.Name));
        Assert.Equal(["lid Seen.", "pins Seen.", "lid Seen."], rule.Open.Select(open => $"{open.Item.Name} {open.Because}"));
    }

    [Theory]
    [InlineData("test \"t\" { power lid  check \"c\" }", "PRC1103 `lid` is a part, not an energy")]
    [InlineData("test \"t\" { power gas  check \"c\" }", "PRC1101 the machine `box` has nothing called `gas`")]
    [InlineData("test \"t\" { power mains  check \"c\"  while lever open because \"b\" }", "PRC1103 `lever` is a control, not a joint or a part")]
    [InlineData("test \"t\" { power mains  check \"c\"  while foot open because \"b\" }", "PRC1110 `foot` does not say which")]
    [InlineData("test \"t\" before fit lids { power mains  check \"c\" }", "PRC1101 the machine `box` has nothing called `lids`")]
    [InlineData("test \"t\" { power mains  check \"c\"  warning \"w\" }", "PRC1118 no step follows this warning")]
    [InlineData("test \"t\" { check \"c\" }", "PRC1116 the test \"t\" does not say what is live")]
    [InlineData("test \"t\" { power mains }", "PRC1116 the test \"t\" does not say what is done")]
    [InlineData("test \"t\" { while pins open because \"b\" }", "PRC1116 the test \"t\" does not say what is live, and what is done")]
    [InlineData("restore lid while pins open because \"b\"", "PRC1103 `lid` is a part, not an energy")]
    [InlineData("restore mains while air open because \"b\"", "PRC1103 `air` is an energy, not a joint or a part")]
    public void What_makes_no_test_is_found(string rule, string finding) =>
        Assert.Equal([finding], Job(rule).Words());

    private static Energy Energy(string property)
    {
        var library = Machine(property);
        Assert.Empty(library.Words());
        return library.Machines[0].Energies.Single(energy => energy.Name == "mains");
    }

    private static Library Machine(string property) => Samples.Bind(Kinds + $$"""
        machine box "box" {
          energy mains "mains" { isolate "i"  restore "r"  {{property}} }
          control lever "lever" { up, down }
          part lid "lid" { held by 2 pin as posts }
          part box_lid "box lid"
        }
        """);

    private static IReadOnlyList<RefitRule> Rules(string rules)
    {
        var library = Job(rules);
        Assert.Empty(library.Words());
        return library.Procedures[0].Rules;
    }

    private static Library Job(string rules) => Samples.Bind(Box + $$"""
        procedure p "p" on box {
          {{Anchor}}
          refit {
            {{rules}}
          }
        }
        """);
}
