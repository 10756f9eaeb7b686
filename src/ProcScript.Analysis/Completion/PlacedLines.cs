using System.Collections.Immutable;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Completion;

/// <summary>What the variants of a procedure lack at one place.</summary>
/// <param name="place">The place.</param>
internal sealed class PlacedLines(InsertionPlace place)
{
    private readonly Dictionary<Procedure, List<string>> _ofVariant = [];
    private readonly HashSet<(string Line, SourceSpan From)> _moved = [];

    /// <summary>The place.</summary>
    public InsertionPlace Place => place;

    /// <summary>A variant lacks some lines more. A loop says a line once for all its passes.</summary>
    public void Add(Procedure variant, IEnumerable<MissingLine> lines)
    {
        if (!_ofVariant.TryGetValue(variant, out var own))
        {
            _ofVariant.Add(variant, own = []);
        }

        foreach (var line in lines)
        {
            if (!own.Contains(line.Words, StringComparer.Ordinal))
            {
                own.Add(line.Words);
            }

            if (line.MovedFrom is { } from)
            {
                _moved.Add((line.Words, from));
            }
        }
    }

    /// <summary>The lines in one order, each with what holds in the variants that lack it; null where there is no such order or test.</summary>
    /// <param name="variants">The variants that come by the place.</param>
    /// <param name="tests">What tells them apart.</param>
    public ImmutableArray<VariantLines>? Group(ImmutableArray<Procedure> variants, VariantTests tests)
    {
        var lacking = _ofVariant.Values.SelectMany(lines => lines).Distinct(StringComparer.Ordinal)
            .ToDictionary(line => line, line => variants.Where(variant => Wants(variant, line)).ToHashSet(), StringComparer.Ordinal);
        if (InOneOrder(lacking) is not { } ordered)
        {
            return null;
        }

        var groups = ImmutableArray.CreateBuilder<VariantLines>();
        for (var from = 0; from < ordered.Count;)
        {
            var some = lacking[ordered[from]];
            ImmutableArray<string> lines = [.. ordered.Skip(from).TakeWhile(line => lacking[line].SetEquals(some))];
            var told = tests.Tell(some, [.. variants.Except(some)]).ToList();
            if (told.Count == 0)
            {
                return null;
            }

            groups.AddRange(told.Select(these => new VariantLines(these, lines)));
            from += lines.Length;
        }

        return groups.ToImmutable();
    }

    /// <summary>Whether a variant lacks a line, or would miss it where it is taken away.</summary>
    private bool Wants(Procedure variant, string line) =>
        _ofVariant.GetValueOrDefault(variant)?.Contains(line, StringComparer.Ordinal) == true
        || _moved.Any(moved => moved.Line == line && variant.Stages.SelectMany(stage => stage.Steps).Any(step => step.Calls.IsEmpty && step.Source == moved.From));

    /// <summary>All lines in an order that keeps that of each variant, those of the same variants together where it can; null where there is none.</summary>
    private List<string>? InOneOrder(Dictionary<string, HashSet<Procedure>> lacking)
    {
        var left = _ofVariant.Values.Select(lines => new Queue<string>(lines)).ToList();
        var ordered = new List<string>();
        while (left.RemoveAll(lines => lines.Count == 0) >= 0 && left.Count > 0)
        {
            var free = left.Select(lines => lines.Peek()).Where(line => !left.Exists(lines => lines.Skip(1).Contains(line))).ToList();
            if (free.Count == 0)
            {
                return null;
            }

            var next = free.Find(line => ordered.Count > 0 && lacking[line].SetEquals(lacking[ordered[^1]])) ?? free[0];
            ordered.Add(next);
            foreach (var lines in left.Where(lines => lines.Peek() == next))
            {
                lines.Dequeue();
            }
        }

        return ordered;
    }
}
