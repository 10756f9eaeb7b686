using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Names;
using ProcScript.Model.Rules.Wording;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Names;

/// <summary>A name with an index that is not declared so.</summary>
public sealed class IndexMismatch : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1110", "index-mismatch", "An index that is not declared", Severity.Error)
    {
        Fix = FixAvailability.Sometimes,
    };

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "The name is declared, with another index: none is written where one is needed, one where there is none, or a value that "
            + "does not occur.",
        Why: "Left or right, first or fourth: a step without the right index does not say which.",
        Wrong: """
            clip pin "push pin"
            machine cab "cab" {
              each side in left, right {
                part trim[side] "{side} trim" { held by 2 pin as trim_pins[side] }
              }
            }
            procedure trim_out "Take the left trim off" on cab {
              stage "Trim" { release trim_pins[left]  remove trim }
            }
            """,
        Right: """
            clip pin "push pin"
            machine cab "cab" {
              each side in left, right {
                part trim[side] "{side} trim" { held by 2 pin as trim_pins[side] }
              }
            }
            procedure trim_out "Take the left trim off" on cab {
              stage "Trim" { release trim_pins[left]  remove trim[left] }
            }
            """);

    /// <summary>Of an item of a machine.</summary>
    internal static Finding At(
        ReferenceSyntax reference, string name, ImmutableArray<string> family, BindingPlace place, SourceSpan declared, FindingSink sink)
    {
        var span = place.At(reference.Span);
        var bare = reference.Name.Text;
        var message = reference.Indices.IsEmpty
            ? $"`{bare}` does not say which"
            : family is [var only] && only == bare ? $"`{bare}` has no index, and `{name}` gives it one" : $"there is no `{name}`";
        var (near, fixes) = family.Length == 1 ? Only(reference, family, place)
            : ValueFixes.HasVariable(reference, place) ? Listed(reference, family, place, sink)
            : Near(reference, Inside(name), family, place, sink);
        return new Finding(Id, message, span, reference.Indices.IsEmpty ? "an index is missing" : "not declared with this index")
        {
            Related = [new LabeledSpan(declared, "declared here")],
            Help = near.IsEmpty ? $"there is {WordList.AndSome(family)}" : DidYouMean.Help(near),
            Fixes = fixes,
        };
    }

    /// <summary>Of a value in the list of a variable that is no index of anything there, with a near one: the slip is in the list, and is told once.</summary>
    internal static Finding? Value(ReferenceSyntax reference, ImmutableArray<string> family, IEnumerable<string> items, BindingPlace place, FindingSink sink)
    {
        var known = items.SelectMany(name => CanonicalName.Indices(name)).ToHashSet(StringComparer.Ordinal);
        foreach (var word in reference.Indices)
        {
            if (place.Bindings.Find(word.Text) is { } variable && !known.Contains(variable.Value) && ValueFixes.ListedAt(variable, place) is { } listed
                && Listed(reference, family, place, sink) is { Fixes.IsEmpty: false } found)
            {
                return new Finding(Id, $"nothing has the index `{variable.Value}`", listed, $"a value of `{variable.Variable}`")
                {
                    Help = DidYouMean.Help(found.Near),
                    Fixes = found.Fixes,
                };
            }
        }

        return null;
    }

    /// <summary>The only one of that name. In a loop it would be the same in each turn, which wants a look.</summary>
    private static (ImmutableArray<string> Near, ImmutableArray<Fix> Fixes) Only(ReferenceSyntax reference, ImmutableArray<string> family, BindingPlace place)
    {
        var fixes = DidYouMean.Fixes(family, place.At(reference.Span));
        return (family, ValueFixes.HasVariable(reference, place) ? [.. fixes.Select(fix => fix with { Grade = FixGrade.NeedsLook })] : fixes);
    }

    /// <summary>Another index in the place of the one that is written.</summary>
    private static (ImmutableArray<string> Near, ImmutableArray<Fix> Fixes) Near(
        ReferenceSyntax reference, string inside, ImmutableArray<string> family, BindingPlace place, FindingSink sink)
    {
        ImmutableArray<string> near = [.. new NearNames(Choices(reference, family, place)).Find(inside, sink).Select(other => $"{reference.Name.Text}[{other}]")];
        return (near, DidYouMean.Fixes(near, place.At(reference.Span)));
    }

    /// <summary>Another value in the place of the first that no index of the family has there, where that is listed.</summary>
    private static (ImmutableArray<string> Near, ImmutableArray<Fix> Fixes) Listed(
        ReferenceSyntax reference, ImmutableArray<string> family, BindingPlace place, FindingSink sink)
    {
        string[][] indices = [.. family.Select(CanonicalName.Indices).Where(values => values.Length == reference.Indices.Length)];
        for (var i = 0; i < reference.Indices.Length; i++)
        {
            var word = reference.Indices[i];
            var value = place.Bindings.Find(word.Text)?.Value ?? word.Text;
            if (indices.Length > 0 && !indices.Any(values => values[i] == value))
            {
                var near = new NearNames(indices.Select(values => values[i])).Find(value, sink);
                return (near, ValueFixes.Of(word, near, place));
            }
        }

        return ([], []);
    }

    /// <summary>What stands in the brackets of the family, and the variables that may stand there.</summary>
    private static IEnumerable<string> Choices(ReferenceSyntax reference, ImmutableArray<string> family, BindingPlace place) => family
        .Select(Inside)
        .Concat(place.Bindings.Variables.Select(one => one.Variable))
        .Where(inside => inside.Count(letter => letter == ',') == reference.Indices.Length - 1);

    private static string Inside(string name) => name[CanonicalName.Base(name).Length..].Trim('[', ']');

    /// <summary>Of a declaration at the top of a file, which has no index.</summary>
    internal static Finding OnSymbol(Symbol symbol, SourceSpan whole, SourceSpan bare) =>
        new(Id, $"`{symbol.Name}` is {symbol.Sort}, which has no index", whole, "only items of a machine have one")
        {
            Related = [new LabeledSpan(symbol.Declared, "declared here")],
            Fixes =
            [
                new Fix(
                    "Leave the index out",
                    FixGrade.Safe,
                    [new TextEdit(whole with { Span = TextSpan.FromBounds(bare.Span.End, whole.Span.End) }, "")]),
            ],
        };
}
