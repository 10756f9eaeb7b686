using System.Text;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Rules.Names;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Binding.Places;

/// <summary>Puts the values of variables into the author's texts: <c>{side}</c> stands for the value, <c>{{</c> for a brace.</summary>
internal static class AuthorText
{
    /// <summary>The text with every placeholder filled in.</summary>
    public static string Bind(TextSyntax text, BindingPlace place, FindingSink sink)
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
