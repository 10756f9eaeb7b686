using System.Collections.Immutable;
using ProcScript.Model.Binding.Places;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Wording;

/// <summary>
/// Fixes of a word that may stand for a variable. The word is then right in every other turn of its loop; what is wrong is the value, and it
/// is put right where the loop lists it.
/// </summary>
internal static class ValueFixes
{
    /// <summary>An edit for each near value.</summary>
    /// <param name="word">The word that gives the wrong value.</param>
    /// <param name="near">What may be meant.</param>
    /// <param name="place">Where the word stands.</param>
    public static ImmutableArray<Fix> Of(WordSyntax word, IEnumerable<string> near, BindingPlace place)
    {
        if (place.Bindings.Find(word.Text) is not { } variable)
        {
            return DidYouMean.Fixes([.. near], place.At(word.Span));
        }

        string[] others = [.. near.Except(variable.Domain).Where(name => place.Bindings.Find(name) is null)];
        return ListedAt(variable, place) is { } listed ? DidYouMean.Fixes(others, listed) : [];
    }

    /// <summary>Whether a reference has an index that stands for a variable.</summary>
    public static bool HasVariable(ReferenceSyntax reference, BindingPlace place) => reference.Indices.Any(word => place.Bindings.Find(word.Text) is not null);

    /// <summary>Where the list of a variable names its value; null where that is a range, or in another file.</summary>
    public static SourceSpan? ListedAt(Bindings variable, BindingPlace place)
    {
        var text = place.File.Tree.Text;
        return variable.Declared.Path != text.Path
            ? null
            : place.File.Tree.Root.Declarations
                .Where(declared => declared.Span.Touches(variable.Declared.Span.Start))
                .SelectMany(declared => declared.DescendantsAndSelf())
                .Select(node => node switch
                {
                    EachSyntax each when each.Variable.Span == variable.Declared.Span => each.Values,
                    ParameterSyntax parameter when parameter.Name.Span == variable.Declared.Span => parameter.Values,
                    _ => null,
                })
                .OfType<ValuesSyntax>()
                .SelectMany(values => values.Values)
                .Where(value => value.Text == variable.Value && text.Slice(value.Span) == value.Text)
                .Select(value => (SourceSpan?)place.At(value.Span))
                .FirstOrDefault();
    }
}
