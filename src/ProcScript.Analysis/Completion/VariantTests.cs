using System.Collections.Immutable;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Completion;

/// <summary>Tells variants of a procedure from others by what <c>when</c> can ask: the options of the machine, and the arguments.</summary>
internal sealed class VariantTests
{
    private readonly ImmutableArray<Question> _questions;

    /// <summary>Gathers what can be asked.</summary>
    /// <param name="node">The text of the procedure.</param>
    /// <param name="variants">The procedure in every variant.</param>
    public VariantTests(ProcedureSyntax node, ImmutableArray<Procedure> variants) => _questions =
    [
        .. variants[0].Machine.Options.Select(option => new Question(
            variant => variant.Machine.With.Contains(option), option.Name, $"not {option.Name}")),
        .. node.Parameters.SelectMany((parameter, index) => Values(parameter.Name.Text, index, variants)),
    ];

    private static IEnumerable<Question> Values(string name, int index, ImmutableArray<Procedure> variants)
    {
        var values = variants.Select(variant => variant.Arguments[index]).Distinct(StringComparer.Ordinal).ToList();
        foreach (var value in values)
        {
            // Of two values the other one says it plainer.
            var no = values.Count == 2 ? values.Find(one => one != value) : $"not {value}";
            yield return new Question(variant => variant.Arguments[index] == value, $"{name} is {value}", $"{name} is {no}");
        }
    }

    /// <summary>Questions that together hold in some variants and in none of others; several sets of them where one is not enough.</summary>
    public IEnumerable<ImmutableArray<string>> Tell(IReadOnlyCollection<Procedure> some, IReadOnlyCollection<Procedure> others) =>
        Tell(some, others, []);

    private IEnumerable<ImmutableArray<string>> Tell(IReadOnlyCollection<Procedure> some, IReadOnlyCollection<Procedure> others, ImmutableArray<string> before)
    {
        if (some.Count == 0 || others.Count == 0)
        {
            return some.Count == 0 ? [] : [before];
        }

        // The question that leaves the fewest on a side where some still stand among others.
        var best = _questions
            .Select(question => (Question: question, Yes: Split(some, others, question.Holds), No: Split(some, others, variant => !question.Holds(variant))))
            .Where(split => split.Yes.Total > 0 && split.No.Total > 0)
            .OrderBy(split => split.Yes.Mixed + split.No.Mixed)
            .Take(1);
        return best.SelectMany(split => Tell(split.Yes.Some, split.Yes.Others, before.Add(split.Question.Yes))
            .Concat(Tell(split.No.Some, split.No.Others, before.Add(split.Question.No))));
    }

    private static Side Split(IReadOnlyCollection<Procedure> some, IReadOnlyCollection<Procedure> others, Func<Procedure, bool> isThere) =>
        new([.. some.Where(isThere)], [.. others.Where(isThere)]);

    private sealed record Question(Func<Procedure, bool> Holds, string Yes, string No);

    private sealed record Side(ImmutableArray<Procedure> Some, ImmutableArray<Procedure> Others)
    {
        public int Total => Some.Length + Others.Length;

        public int Mixed => Some.IsEmpty || Others.IsEmpty ? 0 : Total;
    }
}
