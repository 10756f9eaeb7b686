using System.Collections.Immutable;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Stripping;

/// <summary>
/// Joins the failures of steps that a call brings and that have nothing left to do: whoever calls twice, or after the work has been done, makes one
/// mistake.
/// </summary>
internal static class RepeatedCalls
{
    /// <summary>The failures, with one for each such call.</summary>
    public static ImmutableArray<StripFailure> Join(List<StripFailure> failures, Procedure procedure)
    {
        if (!failures.Exists(failure => failure is AlreadyDone && !failure.Step.Calls.IsEmpty))
        {
            return [.. failures];
        }

        var groups = new Dictionary<StripFailure, RepeatedCall>(ReferenceEqualityComparer.Instance);
        foreach (var group in failures.OfType<AlreadyDone>()
            .Where(failure => !failure.Step.Calls.IsEmpty)
            .GroupBy(failure => string.Join(';', failure.Step.Calls[..(Level(failure) + 1)]), StringComparer.Ordinal))
        {
            groups.Add(group.First(), Call([.. group], procedure));
        }

        return
        [
            .. failures.Where(failure => failure is not AlreadyDone || failure.Step.Calls.IsEmpty || groups.ContainsKey(failure))
                .Select(failure => groups.TryGetValue(failure, out var call) ? ((AlreadyDone)failure) with { Call = call } : failure),
        ];
    }

    private static RepeatedCall Call(ImmutableArray<AlreadyDone> failures, Procedure procedure)
    {
        var first = failures[0];
        var level = failures.All(IsSameText) ? failures.Min(Level) : failures.Select(failure => failure.Step.Calls.Length).Min() - 1;
        while (level > 0 && !failures.All(failure => failure.Step.Calls.AsSpan(..(level + 1)).SequenceEqual(first.Step.Calls.AsSpan(..(level + 1)))))
        {
            level--;
        }

        var prefix = first.Step.Calls[..(level + 1)];
        var earlier = IsSameText(first) && first.Earlier!.Calls.Length - first.Step.Calls.Length + level is >= 0 and var place
            ? first.Earlier.Calls[place]
            : (SourceSpan?)null;
        var count = procedure.Stages.SelectMany(stage => stage.Steps)
            .Count(step => step.Calls.Length > level && step.Calls.AsSpan(..(level + 1)).SequenceEqual(prefix.AsSpan()));
        return new RepeatedCall(prefix[^1], prefix[..^1], earlier == prefix[^1] ? null : earlier, failures, count);
    }

    /// <summary>Whether the step was done by the same line of a procedure that was called before.</summary>
    private static bool IsSameText(AlreadyDone failure) => failure.Earlier is { } earlier && earlier.Source == failure.Step.Source;

    /// <summary>
    /// Which of the calls that brought the step is to blame: the innermost that is not one line of both texts; the outermost where the work was
    /// done otherwise.
    /// </summary>
    private static int Level(AlreadyDone failure)
    {
        if (!IsSameText(failure))
        {
            return 0;
        }

        var (own, other) = (failure.Step.Calls, failure.Earlier!.Calls);
        var same = 0;
        while (same < own.Length && same < other.Length && own[own.Length - 1 - same] == other[other.Length - 1 - same])
        {
            same++;
        }

        return Math.Max(own.Length - 1 - same, 0);
    }
}
