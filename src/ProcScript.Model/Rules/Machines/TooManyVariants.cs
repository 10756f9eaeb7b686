using System.Globalization;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Machines;

/// <summary>A machine with more options than can be tried in every combination.</summary>
public sealed class TooManyVariants : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC2010", "too-many-variants", "More variants than can be checked", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "Every combination of the options that a `when` asks for is checked, up to eight options. This machine has more.",
        Why: "A machine nobody has checked in its combination is the one that stands in the shop. Only the plain one and the one with "
            + "all are looked at.",
        Wrong: """
            clip pin "push pin"
            machine cab "cab" {
              option a  option b  option c  option d  option e  option f  option g  option h  option i
              part trim "trim" {
                held by 2 pin as trim_pins
                when a { held by 1 pin as pin_a }  when b { held by 1 pin as pin_b }  when c { held by 1 pin as pin_c }
                when d { held by 1 pin as pin_d }  when e { held by 1 pin as pin_e }  when f { held by 1 pin as pin_f }
                when g { held by 1 pin as pin_g }  when h { held by 1 pin as pin_h }  when i { held by 1 pin as pin_i }
              }
            }
            """,
        Right: """
            clip pin "push pin"
            machine cab "cab" {
              option a  option b
              part trim "trim" {
                held by 2 pin as trim_pins
                when a { held by 1 pin as pin_a }  when b { held by 1 pin as pin_b }
              }
            }
            """);

    /// <summary>Of the options that matter.</summary>
    internal static Finding At(string machine, IEnumerable<Option> options, int most, SourceSpan place)
    {
        Option[] all = [.. options];
        return new Finding(
            Id,
            $"{Number(all.Length)} options of `{machine}` matter, and every combination of {Number(most)} is the most that is checked",
            place)
        {
            Related = [.. all.Select(option => new LabeledSpan(option.Declared, "this option matters"))],
            Help = "split the machine, or join options that always come together",
        };
    }

    /// <summary>Of the options that are declared at all.</summary>
    internal static Finding Declared(string machine, int most, SourceSpan place) =>
        new(Id, $"`{machine}` declares more than {Number(most)} options", place, "the first one too many")
        {
            Help = "split the machine, or join options that always come together",
        };

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
