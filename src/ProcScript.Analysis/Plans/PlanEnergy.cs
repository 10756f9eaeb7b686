using System.Collections.Immutable;

namespace ProcScript.Analysis.Plans;

/// <summary>An energy that the job isolates.</summary>
/// <param name="Name">The name.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Isolate">How to isolate it; Markdown.</param>
/// <param name="Wait">How long to wait, in words; empty where not said.</param>
/// <param name="Verify">How to verify; Markdown.</param>
/// <param name="Limits">What the reading must be, in words; empty where none is taken.</param>
/// <param name="Restore">How to restore it; Markdown.</param>
/// <param name="IsolatedAt">The step that first isolates it.</param>
/// <param name="RestoredAt">The step that restores it for good; 0 where none does.</param>
public sealed record PlanEnergy(
    string Name,
    string Title,
    string Isolate,
    string Wait,
    string Verify,
    string Limits,
    string Restore,
    int IsolatedAt,
    int RestoredAt)
{
    /// <summary>The titles of the energies that are isolated before it and come back after it.</summary>
    public ImmutableArray<string> After { get; init; } = [];

    /// <summary>How it is made safe, in the order of 29 CFR 1910.147 (d): prepare, shut down, isolate, lock, release, wait, verify.</summary>
    public ImmutableArray<PlanSafetyLine> MakeSafe { get; init; } = [];

    /// <summary>Every step of the job after which it stands otherwise.</summary>
    public ImmutableArray<PlanEnergyTurn> Turns { get; init; } = [];
}

/// <summary>One line of making an energy safe or of bringing it back.</summary>
/// <param name="Action">What is done: <c>prepare</c>, <c>shut down</c>, <c>isolate</c>, <c>lock</c>, <c>release</c>, <c>wait</c> or <c>verify</c>;
/// on the way back <c>area</c>, <c>whole</c>, <c>people</c>, <c>locks</c> or <c>tell</c>.</param>
/// <param name="Text">How; Markdown.</param>
/// <param name="IsUsual">Whether that is what is usual, because the author says nothing of it.</param>
public sealed record PlanSafetyLine(string Action, string Text, bool IsUsual);
