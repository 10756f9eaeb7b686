namespace ProcScript.Analysis.States;

/// <summary>What an action did to one variable.</summary>
/// <param name="Variable">The variable.</param>
/// <param name="Before">Its value before: what the inverse brings back.</param>
/// <param name="After">Its value after.</param>
public readonly record struct StateChange(StateVariable Variable, int Before, int After);
