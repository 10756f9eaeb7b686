using System.Collections.Immutable;
using ProcScript.Analysis.Runs.Failures;

namespace ProcScript.Analysis.Runs;

/// <summary>What came of deriving the refit of a sound strip and performing it.</summary>
/// <param name="Strip">The strip.</param>
/// <param name="Run">The refit; null where none could be derived.</param>
/// <param name="Failures">What is wrong; empty where the refit is proven.</param>
public sealed record RefitAttempt(StripRun Strip, RefitRun? Run, ImmutableArray<RefitFailure> Failures);
