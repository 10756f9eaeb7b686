using System.Globalization;
using System.Text;
using Microsoft.CodeAnalysis.Text;

namespace ProcScript.Mutation.Making;

/// <summary>A file with all its mutants in it, of which one at most is chosen while it runs.</summary>
/// <param name="Path">The path, relative to the room.</param>
/// <param name="Source">What is there.</param>
/// <param name="Units">The units that have mutants, in the order of the file.</param>
internal sealed record MutatedFile(string Path, string Source, IReadOnlyList<(CodeUnit Unit, int Number, IReadOnlyList<(Mutant Mutant, TextSpan Span, string After)> Changes)> Units)
{
    /// <summary>Writes the file, and says where each mutant and each unit has come to stand.</summary>
    /// <param name="dropped">Mutants that cannot be compiled.</param>
    public (string Text, List<(TextSpan Span, int Mutant)> Mutants, List<(TextSpan Span, IReadOnlyList<int> Mutants)> Whole) Write(IReadOnlySet<int> dropped)
    {
        StringBuilder text = new();
        List<(TextSpan, int)> mutants = [];
        List<(TextSpan, IReadOnlyList<int>)> whole = [];
        var at = 0;
        foreach (var (unit, number, changes) in Units)
        {
            var kept = changes.Where(change => !dropped.Contains(change.Mutant.Number)).ToList();
            if (kept.Count == 0)
            {
                continue;
            }

            text.Append(Source, at, unit.Span.Start - at);
            var start = text.Length;
            if (unit.Sort == UnitSort.Initialiser)
            {
                WriteChain(text, unit, kept, mutants);
            }
            else
            {
                WriteSwitch(text, unit, number, kept, mutants);
            }

            whole.Add((TextSpan.FromBounds(start, text.Length), [.. kept.Select(change => change.Mutant.Number)]));
            at = unit.Span.End;
        }

        text.Append(Source, at, Source.Length - at);
        return (text.ToString(), mutants, whole);
    }

    private void WriteChain(StringBuilder text, CodeUnit unit, List<(Mutant Mutant, TextSpan Span, string After)> changes, List<(TextSpan, int)> mutants)
    {
        text.Append('(');
        foreach (var change in changes)
        {
            text.Append(CultureInfo.InvariantCulture, $"global::ProcScript.Mutating.Mutant.Is({change.Mutant.Unit}, {change.Mutant.Number}) ? (");
            Add(text, mutants, change.Mutant.Number, Changed(unit, change.Span, change.After));
            text.Append(") : ");
        }

        text.Append(Source, unit.Root.SpanStart, unit.Root.Span.Length).Append(')');
    }

    private void WriteSwitch(StringBuilder text, CodeUnit unit, int number, List<(Mutant Mutant, TextSpan Span, string After)> changes, List<(TextSpan, int)> mutants)
    {
        text.Append(unit.Sort == UnitSort.Getter ? "{ get { " : "{ ");
        text.Append(CultureInfo.InvariantCulture, $"switch (global::ProcScript.Mutating.Mutant.Among({number}, {changes[0].Mutant.Number}, {changes[^1].Mutant.Number}))\n{{\n");
        foreach (var change in changes)
        {
            text.Append(CultureInfo.InvariantCulture, $"case {change.Mutant.Number}: {{ ");
            Add(text, mutants, change.Mutant.Number, Statement(unit, Changed(unit, change.Span, change.After)));
            // A mutant that has lost its return falls out of the method that must return something.
            text.Append(unit.Type is null || unit.IsIterator ? " } break;\n" : " throw global::ProcScript.Mutating.Mutant.Fell(); }\n");
        }

        text.Append("default: { ").Append(Statement(unit, Source.Substring(unit.Root.SpanStart, unit.Root.Span.Length))).Append(" } break;\n}\n");
        text.Append(unit.Sort == UnitSort.Getter ? "} }" : "}");
    }

    private static string Statement(CodeUnit unit, string code) => unit.Sort == UnitSort.Block ? code : unit.Type is null ? $"{code};" : $"return {code};";

    private string Changed(CodeUnit unit, TextSpan span, string after) =>
        Source[unit.Root.SpanStart..span.Start] + after + Source[span.End..unit.Root.Span.End];

    private static void Add(StringBuilder text, List<(TextSpan, int)> mutants, int number, string code)
    {
        mutants.Add((new TextSpan(text.Length, code.Length), number));
        text.Append(code);
    }
}
