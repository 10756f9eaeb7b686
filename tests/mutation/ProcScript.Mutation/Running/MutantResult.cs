namespace ProcScript.Mutation.Running;

/// <summary>What became of a mutant.</summary>
/// <param name="Outcome">Whether it lives.</param>
/// <param name="Why">The test that failed, and how.</param>
internal sealed record MutantResult(MutantOutcome Outcome, string Why);

/// <summary>What can become of a mutant.</summary>
internal enum MutantOutcome
{
    /// <summary>A test fails with it.</summary>
    Killed,

    /// <summary>Every test that reaches it passes.</summary>
    Survived,

    /// <summary>No test that is quick enough reaches it.</summary>
    NotReached,
}
