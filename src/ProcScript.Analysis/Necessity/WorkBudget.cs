namespace ProcScript.Analysis.Necessity;

/// <summary>
/// How much may be tried on one procedure: each trial performs it anew, so the count must not grow with its length. Up to the
/// length of any job that a person reads, every line that needs a trial gets one.
/// </summary>
/// <param name="length">How many actions the procedure has, in all its variants.</param>
internal sealed class WorkBudget(int length)
{
    private const int LeastActions = 100_000;
    private const int TrialsOfAnyLength = 20;

    private long _left = Math.Max(LeastActions, (long)TrialsOfAnyLength * length);

    /// <summary>Takes as much as performing so many actions costs; false where that is not left.</summary>
    public bool Spend(int actions)
    {
        if (_left < actions)
        {
            return false;
        }

        _left -= actions;
        return true;
    }
}
