using ProcScript.Model.Machines;

namespace ProcScript.Model.Tests.Binding;

/// <summary>Options and the variants that they make.</summary>
public sealed class VariantTests
{
    [Fact]
    public void Every_combination_of_the_options_that_guard_something_is_made_the_plain_one_first()
    {
        var library = Samples.Bind("""
            clip pin "pin"
            machine m "m" {
              option idle  option a  option b
              part p "p" { held by 1 pin as j  when a { held by 1 pin as ja }  when not b { mass 3 kg } }
            }
            procedure q "q" on m { stage "s" { release j } }
            """);
        Assert.Empty(library.Words());
        Assert.Equal(["", "a", "b", "a b"], library.Machines.Select(With));
        Assert.Equal(["", "a", "b", "a b"], library.Procedures.Select(one => With(one.Machine)));
        Assert.Equal([1, 2, 1, 2], library.Machines.Select(machine => machine.Joints.Length));
        Assert.Equal([true, true, false, false], library.Machines.Select(machine => machine.Parts[0].Mass is not null));
    }

    [Fact]
    public void An_option_that_only_a_procedure_asks_for_counts_for_it_and_for_its_callers()
    {
        var library = Samples.Bind("""
            clip pin "pin"
            machine m "m" { option a  option b  part p "p" { held by 1 pin as j } }
            procedure inner "inner" on m { stage "s" { when a { release j } } }
            procedure outer "outer" on m { do inner }
            procedure plain "plain" on m { stage "s" { release j } }
            """);
        Assert.Equal(
            ["inner ", "inner a", "outer ", "outer a", "plain "],
            library.Procedures.Select(one => $"{one.Name} {With(one.Machine)}"));
        Assert.Equal([0, 1, 0, 1, 1], library.Procedures.Select(one => one.Stages.Sum(stage => stage.Steps.Length)));
        Assert.Equal(["", "a"], library.Machines.Select(With));
        Assert.Same(library.Procedures[0].Machine, library.Procedures[4].Machine);
    }

    [Theory]
    [InlineData("part r \"r\" { when a { held by 1 nope as x } }", "no fastener, clip or bond is called `nope`")]
    [InlineData("when a { part r \"r\" { behind q, nope } }", "the machine `m` has nothing called `nope`")]
    [InlineData("when a { part r \"r\" { behind q[left] } }", "`q` has no index, and `q[left]` gives it one")]
    public void What_is_wrong_wherever_the_text_counts_does_not_speak_of_options(string member, string message)
    {
        var library = Samples.Bind($$"""
            clip pin "pin"
            machine m "m" { option a  option b  part q "q" { when b { held by 1 pin as j } }  {{member}} }
            """);
        Assert.Equal([message], library.Findings.Select(finding => finding.Message));
    }

    [Fact]
    public void What_is_wrong_in_some_variants_only_says_in_which()
    {
        var library = Samples.Bind("""
            clip pin "pin"
            machine m "m" {
              option a  option b
              when a { part r "r" { held by 1 pin as j } }
              part q "q" { held by 1 pin as j  when b { mass 1 kg } }
            }
            """);
        Assert.Equal(["PRC1102 `j` is declared twice, with `a`"], library.Words());
    }

    [Fact]
    public void What_is_wrong_wherever_its_own_when_holds_says_nothing_of_it()
    {
        var library = Samples.Bind("""
            clip pin "pin"
            machine m "m" {
              option a  option b
              part q "q" { held by 1 pin as j  when b { mass 1 kg } }
              when a { part r "r" { held by 1 pin as j } }
            }
            """);
        Assert.Equal(["PRC1102 `j` is declared twice"], library.Words());
    }

    [Fact]
    public void An_alert_that_a_step_follows_only_with_an_option_says_so()
    {
        var library = Samples.Bind("""
            clip pin "pin"
            machine m "m" { option a  option b  part p "p" { held by 1 pin as j  when b { held by 1 pin as k } } }
            procedure q "q" on m { stage "s" { release j  caution "sharp"  when a { when b { release k } } } }
            """);
        Assert.Equal(["PRC1118 no step follows this caution, in some variants, the plain one among them"], library.Words());
    }

    [Fact]
    public void An_error_in_one_variant_leaves_the_others_to_be_run()
    {
        var library = Samples.Bind("""
            clip pin "pin"
            machine m "m" { option a  part p "p" { held by 1 pin as j  when a { behind nope } } }
            procedure q "q" on m { stage "s" { release j } }
            """);
        Assert.Equal(["PRC1101 the machine `m` has nothing called `nope`"], library.Words());
        Assert.Equal([false, true], library.Procedures.Select(one => one.HasErrors));
        Assert.Equal([false, true], library.Machines.Select(one => one.HasErrors));
    }

    private static string With(Machine machine) => string.Join(' ', machine.With.Select(option => option.Name));
}
