namespace ProcScript.Model.Binding;

/// <summary>Makes the pieces of one stage of a binding: those that still hold are taken over, the others made in parallel.</summary>
/// <param name="validity">Tells what still holds.</param>
/// <param name="parallel">How to run in parallel.</param>
internal sealed class Pieces(Validity validity, ParallelOptions parallel)
{
    /// <summary>Tells what still holds.</summary>
    public Validity Validity => validity;

    /// <summary>The pieces.</summary>
    /// <param name="wanted">What they are made from.</param>
    /// <param name="recall">The piece of before, where it holds.</param>
    /// <param name="make">Makes one.</param>
    public TPiece[] Make<TWanted, TPiece>(IReadOnlyList<TWanted> wanted, Func<TWanted, TPiece?> recall, Func<TWanted, TPiece> make)
        where TPiece : class
    {
        var made = new TPiece[wanted.Count];
        var missing = new List<int>();
        for (var index = 0; index < made.Length; index++)
        {
            if (recall(wanted[index]) is { } known)
            {
                made[index] = known;
            }
            else
            {
                missing.Add(index);
            }
        }

        if (missing.Count > 0)
        {
            Parallel.For(0, missing.Count, parallel, index => made[missing[index]] = make(wanted[missing[index]]));
        }

        return made;
    }
}
