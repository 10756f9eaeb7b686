using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Runs.Failures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules;

/// <summary>A rule that speaks of one kind of failure in a strip.</summary>
/// <typeparam name="TFailure">The kind.</typeparam>
public abstract class StripFailureRule<TFailure> : StripRule
    where TFailure : StripFailure
{
    /// <inheritdoc/>
    public sealed override IEnumerable<Finding> Check(StripRun run) =>
        run.Failures.OfType<TFailure>().Select(failure => Describe(failure, run));

    /// <summary>The finding for a failure.</summary>
    protected abstract Finding Describe(TFailure failure, StripRun run);
}
