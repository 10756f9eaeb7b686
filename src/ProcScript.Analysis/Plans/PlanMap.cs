using System.Collections.Immutable;

namespace ProcScript.Analysis.Plans;

/// <summary>What hides what among the parts that the job touches.</summary>
/// <param name="Nodes">The parts, in the order they come off; parts that only go aside among them.</param>
/// <param name="Edges">What hides what.</param>
public sealed record PlanMap(ImmutableArray<PlanMapNode> Nodes, ImmutableArray<PlanMapEdge> Edges);

/// <summary>A part on the map.</summary>
/// <param name="Name">The name.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Step">The step at which it comes off, or goes aside if it never comes off; 0 where it does neither.</param>
/// <param name="Move"><c>off</c>, <c>aside</c> or <c>stays</c>.</param>
/// <param name="IsGoal">Whether a goal names it.</param>
public sealed record PlanMapNode(string Name, string Title, int Step, string Move, bool IsGoal);

/// <summary><paramref name="Front"/> hides <paramref name="Behind"/>.</summary>
/// <param name="Front">The part in front.</param>
/// <param name="Behind">The part behind it.</param>
public sealed record PlanMapEdge(string Front, string Behind);
