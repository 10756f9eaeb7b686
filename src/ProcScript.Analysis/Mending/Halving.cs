using System.Collections.Immutable;

namespace ProcScript.Analysis.Mending;

/// <summary>
/// Applies what may be applied of many edits. Those that must not stay are told apart by halves, so that one bad edit among a thousand costs ten
/// checks and not a thousand.
/// </summary>
/// <param name="apply">The library with these edits in it.</param>
/// <param name="objection">Why such a library must not stay, as the rest of a sentence; null where it may.</param>
/// <param name="refuse">Told of each edit that is not applied, and why.</param>
internal sealed class Halving<T>(Func<ImmutableArray<T>, MendState> apply, Func<MendState, ImmutableArray<T>, string?> objection, Action<T, string> refuse)
{
    /// <summary>Applies them.</summary>
    /// <param name="start">The library without any.</param>
    /// <param name="edits">The edits.</param>
    /// <returns>Those that stay, and the library with them.</returns>
    public (ImmutableArray<T> Accepted, MendState State) Run(MendState start, ImmutableArray<T> edits)
    {
        var (accepted, best) = (ImmutableArray<T>.Empty, start);
        Stack<ImmutableArray<T>> open = new(edits.IsEmpty ? [] : [edits]);
        while (open.TryPop(out var tried))
        {
            var together = accepted.AddRange(tried);
            var next = apply(together);
            if (objection(next, together) is not { } why)
            {
                (accepted, best) = (together, next);
            }
            else if (tried is [var single])
            {
                refuse(single, why);
            }
            else
            {
                open.Push(tried[(tried.Length / 2)..]);
                open.Push(tried[..(tried.Length / 2)]);
            }
        }

        return (accepted, best);
    }
}
