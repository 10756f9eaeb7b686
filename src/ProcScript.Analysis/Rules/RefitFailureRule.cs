using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules;

/// <summary>A rule that speaks of one kind of failure in a refit.</summary>
/// <typeparam name="TFailure">The kind.</typeparam>
public abstract class RefitFailureRule<TFailure> : RefitRunRule
    where TFailure : RefitFailure
{
    /// <inheritdoc/>
    public sealed override IEnumerable<Finding> Check(RefitAttempt attempt) =>
        attempt.Failures.OfType<TFailure>().Select(failure => Describe(failure, attempt));

    /// <summary>The finding for a failure.</summary>
    protected abstract Finding Describe(TFailure failure, RefitAttempt attempt);
}
