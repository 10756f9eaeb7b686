using System.Collections.Immutable;
using System.Numerics;
using ProcScript.Model.Binding;
using ProcScript.Model.Binding.Machines;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Binding.Procedures;
using ProcScript.Model.Machines;
using ProcScript.Model.Rules.Wording;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Names;

/// <summary>A name that exists only with an option, used where the option is not asked for.</summary>
public sealed class OnlyInSomeVariants : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id =
        new("PRC1108", "only-in-some-variants", "A name that exists only with an option", Severity.Error)
        {
            Fix = FixAvailability.Sometimes,
        };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "The item is declared inside a `when` of the machine, or the procedure is written `with` or `without` an option; and it is "
            + "named where that does not hold.",
        Why: "On a machine without the option the step speaks of something that is not there.",
        Wrong: """
            clip pin "push pin"
            machine cab "cab" {
              option heater "seat heater"
              part trim "trim" { held by 2 pin as trim_pins }
              when heater { part pad "heater pad" { held by 2 pin as pad_pins } }
            }
            procedure trim_out "Take the trim off" on cab {
              stage "Trim" { release trim_pins  remove trim  release pad_pins  remove pad }
            }
            """,
        Right: """
            clip pin "push pin"
            machine cab "cab" {
              option heater "seat heater"
              part trim "trim" { held by 2 pin as trim_pins }
              when heater { part pad "heater pad" { held by 2 pin as pad_pins } }
            }
            procedure trim_out "Take the trim off" on cab {
              stage "Trim" { release trim_pins  remove trim  when heater { release pad_pins  remove pad } }
            }
            """);

    internal static Finding At(
        string name,
        IReadOnlyList<OutlineItem> declared,
        ImmutableArray<Option> options,
        ulong variant,
        BindingPlace place,
        TextSpan reference,
        TextSpan? step)
    {
        string[] conditions = [.. declared.Select(one => Condition(one.Place.Guards, options)).Distinct(StringComparer.Ordinal)];
        var without = declared.Count == 1 ? Missing(declared[0].Place.Guards, options, variant) : "";
        return new Finding(Id, $"`{name}` exists only {WordList.Or(conditions)}", place.At(reference), without)
        {
            Related = [.. declared.Select(one => new LabeledSpan(one.Declared, $"declared {Condition(one.Place.Guards, options)}"))],
            Help = Excludes(place.Guards, declared[0].Place.Guards)
                ? $"the place is reached {Condition(place.Guards, options)} only: leave it out"
                : $"speak of it inside `when {Tests(declared[0].Place.Guards, options)[0]} {{ … }}` only",
            Fixes = declared.Count == 1 && step is { } whole && !Excludes(place.Guards, declared[0].Place.Guards) ? [Wrap(declared[0].Place.Guards, options, place, whole)] : [],
        };
    }

    /// <summary>Of a procedure that is called where its machine does not have it.</summary>
    internal static Finding Procedure(ProcedureOutline target, ImmutableArray<Option> options, ulong variant, BindingPlace place, DoSyntax call)
    {
        var guards = target.Head.Guards;
        var isNever = Excludes(place.Guards, guards);
        return new Finding(
            Id,
            $"the job `{target.Symbol.Name}` exists only {Condition(guards, options)}",
            place.At(call.Span),
            Missing(guards, options, variant))
        {
            Related = [new LabeledSpan(target.Symbol.Declared, $"written for machines {Condition(guards, options)}")],
            Help = isNever
                ? $"the place is reached {Condition(place.Guards, options)} only: leave it out"
                : $"call it inside `when {string.Join(" { when ", Tests(guards, options))} {{ … }}` only",
            Fixes = isNever ? [] : [Wrap(guards, options, place, call.Span)],
        };
    }

    /// <summary>Whether no variant has both.</summary>
    private static bool Excludes(Guards one, Guards other) => (one.On & other.Off) != 0 || (one.Off & other.On) != 0;

    private static Fix Wrap(Guards guards, ImmutableArray<Option> options, BindingPlace place, TextSpan step)
    {
        var tests = Tests(guards, options);
        return new Fix(
            $"Put the step into {WordList.And(tests.Select(test => $"`when {test}`"))}",
            FixGrade.NeedsLook,
            [
                new TextEdit(place.At(new TextSpan(step.Start, 0)), string.Concat(tests.Select(test => $"when {test} {{ "))),
                new TextEdit(place.At(new TextSpan(step.End, 0)), string.Concat(tests.Select(_ => " }"))),
            ]);
    }

    private static string[] Tests(Guards guards, ImmutableArray<Option> options) =>
    [
        .. Variants.OptionsOf(guards.On, options).Select(option => option.Name),
        .. Variants.OptionsOf(guards.Off, options).Select(option => "not " + option.Name),
    ];

    private static string Condition(Guards guards, ImmutableArray<Option> options) => WordList.And(
        Variants.OptionsOf(guards.On, options).Select(option => $"with `{option.Name}`")
            .Concat(Variants.OptionsOf(guards.Off, options).Select(option => $"without `{option.Name}`")));

    private static string Missing(Guards guards, ImmutableArray<Option> options, ulong variant)
    {
        var lacks = guards.On & ~variant;
        return lacks != 0
            ? $"also reached without `{options[BitOperations.TrailingZeroCount(lacks)].Name}`"
            : $"also reached with `{options[BitOperations.TrailingZeroCount(guards.Off & variant)].Name}`";
    }
}
