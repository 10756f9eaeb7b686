using System.Text.RegularExpressions;
using System.Text;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Names;
using ProcScript.Model.Rules.Names;
using ProcScript.Model.Texts;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Binding.Places;

/// <summary>Puts the values of variables into the author's texts: <c>{side}</c> stands for the value, <c>{{</c> for a brace.</summary>
internal static partial class AuthorText
{
    /// <summary>The text with every placeholder filled in; between marks where the library is told in another language.</summary>
    public static string Bind(TextSyntax text, BindingPlace place, FindingSink sink)
    {
        var filled = Filled(text, place, sink);
        return place.File.Texts is { } texts
            ? texts.Marked(filled, texts.Find(text.Span) is { } target ? Translated(target, place, texts) : null)
            : filled;
    }

    /// <summary>The name of what has no title, as words; between marks where the library is told in another language.</summary>
    public static string Named(WordSyntax name, BindingPlace place) =>
        place.File.Texts is { } texts ? texts.Marked(Words(name.Text), texts.Find(name.Span)) : Words(name.Text);

    /// <summary>The same of a name with an index, whose words follow.</summary>
    public static string Named(ReferenceSyntax name, string canonical, BindingPlace place)
    {
        var words = CanonicalName.Words(canonical);
        if (place.File.Texts is not { } texts)
        {
            return words;
        }

        var indices = name.Indices.Select(index => texts.Word(place.Bindings.Find(index.Text)?.Value ?? index.Text));
        return texts.Marked(words, texts.Find(name.Span) is { } target ? string.Join(' ', indices.Prepend(target)) : null);
    }

    /// <summary>A word that stands by itself, such as a position of a control; between marks where the library is told in another language.</summary>
    public static string Word(string word, BindingPlace place) =>
        place.File.Texts is { } texts ? texts.Marked(Words(word), texts.FindWord(word)) : Words(word);

    private static string Translated(string target, BindingPlace place, FileTexts texts) => Placeholder().Replace(
        target,
        match => match.Value == "{{" ? "{" : place.Bindings.Find(match.Groups["name"].Value) is { } variable ? texts.Word(variable.Value) : match.Value);

    [GeneratedRegex(@"\{\{|\{(?<name>\w+)\}", RegexOptions.CultureInvariant)]
    private static partial Regex Placeholder();

    /// <summary>The text with every placeholder filled in, as it is in every language: the name of a file.</summary>
    public static string Filled(TextSyntax text, BindingPlace place, FindingSink sink)
    {
        var value = text.Value;
        var brace = value.IndexOf('{', StringComparison.Ordinal);
        if (brace < 0)
        {
            return value;
        }

        var filled = new StringBuilder(value.Length);
        var at = 0;
        while (brace >= 0)
        {
            filled.Append(value, at, brace - at);
            if (brace + 1 < value.Length && value[brace + 1] == '{')
            {
                filled.Append('{');
                at = brace + 2;
            }
            else
            {
                var end = brace + 1;
                while (end < value.Length && (char.IsLetterOrDigit(value[end]) || value[end] == '_'))
                {
                    end++;
                }

                var name = value[(brace + 1)..end];
                var isClosed = name.Length > 0 && end < value.Length && value[end] == '}';
                if (!isClosed)
                {
                    sink.Report(UnknownVariable.Brace(PlaceOf("{", text, place)), place);
                    filled.Append('{');
                    at = brace + 1;
                }
                else if (place.Bindings.Find(name) is { } variable)
                {
                    filled.Append(Words(variable.Value));
                    at = end + 1;
                }
                else
                {
                    var near = Unrolling.Near(name, place.Bindings, sink);
                    sink.Report(UnknownVariable.InText(name, place.Bindings, near, PlaceOf($"{{{name}}}", text, place)), place);
                    at = end + 1;
                }
            }

            brace = value.IndexOf('{', at);
        }

        return filled.Append(value, at, value.Length - at).ToString();
    }

    /// <summary>A name or value as words: underscores are blanks.</summary>
    public static string Words(string name) => name.Replace('_', ' ');

    /// <summary>The placeholder within the quotes; the whole text where escapes hide it.</summary>
    private static SourceSpan PlaceOf(string placeholder, TextSyntax text, BindingPlace place)
    {
        var raw = place.File.Tree.Text.Slice(text.Span);
        var at = raw.IndexOf(placeholder, StringComparison.Ordinal);
        while (at >= 0 && at + 1 < raw.Length && placeholder.Length == 1 && raw[at + 1] == '{')
        {
            at = at + 2 < raw.Length ? raw.IndexOf(placeholder, at + 2, StringComparison.Ordinal) : -1;
        }

        return place.At(at < 0 ? text.Span : new TextSpan(text.Span.Start + at, placeholder.Length));
    }
}
