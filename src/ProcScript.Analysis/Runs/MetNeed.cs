using ProcScript.Analysis.Needs;

namespace ProcScript.Analysis.Runs;

/// <summary>Something that had to be true for an action, and was.</summary>
/// <param name="Need">What.</param>
/// <param name="MetBy">The number of the action that made it true last; -1 where it was so from the start.</param>
public readonly record struct MetNeed(Need Need, int MetBy);
