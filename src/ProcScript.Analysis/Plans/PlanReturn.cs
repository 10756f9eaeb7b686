using System.Collections.Immutable;

namespace ProcScript.Analysis.Plans;

/// <summary>What is worked down right before a step that brings an energy back.</summary>
/// <param name="Lines">The lines, in the order of 29 CFR 1910.147 (e): area, machine whole, people, locks, tell. The step itself restores.</param>
/// <param name="StillOpen">What the job has opened and not closed again when the energy comes back.</param>
public sealed record PlanReturn(ImmutableArray<PlanSafetyLine> Lines, ImmutableArray<PlanOpenItem> StillOpen);

/// <summary>What is worked down right before a step that isolates an energy again.</summary>
/// <param name="Lines">The lines, in the order of 29 CFR 1910.147 (d): prepare, shut down, isolate, lock, release what is stored, wait, verify.</param>
/// <param name="Limits">What the reading must be, in words; empty where not said.</param>
public sealed record PlanIsolation(ImmutableArray<PlanSafetyLine> Lines, string Limits);

/// <summary>Something that is not whole yet when an energy comes back.</summary>
/// <param name="Title">What, and of a joint where.</param>
/// <param name="State">How it is: <c>still on</c>, <c>out</c>, <c>aside</c>, <c>open</c>, <c>slack</c>, <c>empty</c>, or how many of a joint are on.</param>
/// <param name="ClosedAt">The step after which it is whole again.</param>
public sealed record PlanOpenItem(string Title, string State, int ClosedAt);
