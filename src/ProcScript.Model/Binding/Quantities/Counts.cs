using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Rules.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Quantities;

/// <summary>Binds numbers of pieces.</summary>
internal static class Counts
{
    /// <summary>The number, or null with a finding where it is zero.</summary>
    public static int? Bind(CountSyntax count, string what, BindingPlace place, FindingSink sink)
    {
        if (count.Value > 0)
        {
            return count.Value;
        }

        // Missing, or too large to read: the parser has said so.
        if (count.Span.Length == 0 || place.File.HasSyntaxErrorsIn(count.Span))
        {
            sink.Poison();
        }
        else
        {
            sink.Report(CountOfZero.At(what, place.At(count.Span)), place);
        }

        return null;
    }
}
