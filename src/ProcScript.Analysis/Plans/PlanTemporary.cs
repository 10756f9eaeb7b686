using System.Collections.Immutable;

namespace ProcScript.Analysis.Plans;

/// <summary>Something that is on the machine for the job alone, and must not stay there.</summary>
/// <param name="Title">What.</param>
/// <param name="Count">How many.</param>
/// <param name="Where">Of caps, where; of a temporary part the pieces that hold it.</param>
/// <param name="IsCap">Whether it is a cap on an opening, and no temporary part.</param>
/// <param name="OnAt">The steps at which it goes on.</param>
/// <param name="OffAt">The steps at which it comes off again, one for each of the others; 0 where it stays on, since what belongs there does not go back.</param>
public sealed record PlanTemporary(string Title, int Count, string Where, bool IsCap, ImmutableArray<int> OnAt, ImmutableArray<int> OffAt)
{
    /// <summary>Whether it is on the machine once a step and all before it are done.</summary>
    internal bool IsOnAfter(int step) => OnAt.Count(on => on <= step) > OffAt.Count(off => off > 0 && off <= step);
}
