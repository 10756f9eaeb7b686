using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Runs.Failures;

/// <summary>Something in the strip that cannot be done as written: the facts; a rule makes a finding of it.</summary>
/// <param name="Step">The step.</param>
public abstract record StripFailure(Step Step);
