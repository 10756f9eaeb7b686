using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Rules.Names;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Places;

/// <summary>What <c>each</c> and <c>when</c> do to the place of their bodies.</summary>
internal static class Unrolling
{
    /// <summary>The places of an <c>each</c>'s body, one a value.</summary>
    public static IEnumerable<BindingPlace> Each(EachSyntax each, BindingPlace place, FindingSink sink)
    {
        if (each.Variable.IsMissing)
        {
            sink.LoseNames();
        }
        else if (place.Bindings.Find(each.Variable.Text) is { } outer)
        {
            sink.Report(DeclaredTwice.Variable(each.Variable.Text, place.At(each.Variable.Span), outer.Declared), place);
        }

        var domain = Domain(each.Values, place, sink);
        foreach (var value in domain)
        {
            yield return place with { Bindings = place.Bindings.With(each.Variable.Text, value, domain, place.At(each.Variable.Span)) };
        }
    }

    /// <summary>The values of an <c>each</c> or a parameter, each once.</summary>
    public static ImmutableArray<string> Domain(ValuesSyntax values, BindingPlace place, FindingSink sink)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var domain = ImmutableArray.CreateBuilder<string>(values.Values.Length);
        foreach (var value in values.Values)
        {
            if (value.IsMissing)
            {
                sink.LoseNames();
            }
            else if (seen.Add(value.Text))
            {
                domain.Add(value.Text);
            }
            else
            {
                sink.Report(DeclaredTwice.Value(value.Text, place.At(value.Span)), place);
            }
        }

        return domain.ToImmutable();
    }

    /// <summary>The place of a <c>when</c>'s body, or null where the body does not count for the values of the variables.</summary>
    /// <param name="test">The test.</param>
    /// <param name="place">The place of the <c>when</c>.</param>
    /// <param name="options">The options of the machine.</param>
    /// <param name="sink">Where findings go.</param>
    public static BindingPlace? When(TestSyntax test, BindingPlace place, OptionNames options, FindingSink sink)
    {
        if (test.Name.IsMissing)
        {
            sink.LoseNames();
            return place;
        }

        var variable = place.Bindings.Find(test.Name.Text);
        if (test.Value is { } value)
        {
            return IsValue(test, variable, value, place, options, sink) == test.Negated ? null : place;
        }

        if (options.IndexOf(test.Name.Text) is >= 0 and var option)
        {
            var guards = place.Guards.With(option, !test.Negated);
            return (guards.On & guards.Off) == 0 ? place with { Guards = guards } : null;
        }

        if (variable is not null)
        {
            sink.Report(WrongSortOfItem.VariableAsOption(variable, test.Negated, place.At(test.Span)), place);
        }
        else if (options.IsComplete)
        {
            sink.Report(UnknownName.Option(test.Name.Text, options.Near(test.Name.Text, sink), place.At(test.Name.Span)), place);
        }
        else
        {
            sink.Poison();
        }

        // The body counts as if the option were on, so that the names in it are known.
        if (test.Negated)
        {
            sink.LoseNames();
        }

        return test.Negated ? null : place;
    }

    /// <summary>The variables in force that are near to the one wanted.</summary>
    public static ImmutableArray<string> Near(string wanted, Bindings bindings, FindingSink sink) =>
        new NearNames(bindings.Variables.Select(one => one.Variable)).Find(wanted, sink);

    private static bool IsValue(
        TestSyntax test, Bindings? variable, WordSyntax value, BindingPlace place, OptionNames options, FindingSink sink)
    {
        if (variable is null)
        {
            var name = test.Name.Text;
            sink.Report(
                options.IndexOf(name) >= 0
                    ? WrongSortOfItem.OptionAsVariable(name, place.At(test.Span))
                    : UnknownVariable.InTest(name, place.Bindings, Near(name, place.Bindings, sink), place.At(test.Name.Span)),
                place);
            // Whatever the test: the body counts, so that the names in it are known.
            return !test.Negated;
        }

        if (value.IsMissing)
        {
            sink.LoseNames();
        }
        else if (!variable.Domain.Contains(value.Text))
        {
            sink.LoseNames();
            var near = new NearNames(variable.Domain).Find(value.Text, sink);
            sink.Report(ValueNeverTaken.At(variable, value.Text, near, place.At(value.Span)), place);
        }

        return variable.Value == value.Text;
    }
}
