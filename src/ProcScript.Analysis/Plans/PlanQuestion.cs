namespace ProcScript.Analysis.Plans;

/// <summary>A question of a draft that is still open.</summary>
/// <param name="Text">What it asks, in the author's words.</param>
/// <param name="Source">The comment that asks it.</param>
/// <param name="Step">The first step that is about what the comment stands at; 0 where none is.</param>
public sealed record PlanQuestion(string Text, PlanSource Source, int Step);
