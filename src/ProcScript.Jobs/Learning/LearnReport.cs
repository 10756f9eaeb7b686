using System.Collections.Immutable;
using ProcScript.Analysis.Mending;
using ProcScript.Syntax.Findings;

namespace ProcScript.Jobs.Learning;

/// <summary>What jobs teach a library, and what the library comes to with it. Nothing is on a disk yet.</summary>
/// <param name="Document">What is told.</param>
/// <param name="Fixes">The edits of the suggestions that can be written, by the suggestions' numbers.</param>
/// <param name="Texts">The library before and after.</param>
public sealed record LearnReport(LearnDocument Document, ImmutableDictionary<int, Fix> Fixes, PropertyReport Texts);

/// <summary>What jobs teach a library.</summary>
public sealed record LearnDocument
{
    /// <summary>The version of this document's form.</summary>
    public string Format { get; init; } = "1";

    /// <summary>How many jobs have to tell the same.</summary>
    public required int AtLeast { get; init; }

    /// <summary>The jobs that were looked at.</summary>
    public required ImmutableArray<LearnedJobs> Jobs { get; init; }

    /// <summary>How many steps were ticked in them.</summary>
    public required int Ticked { get; init; }

    /// <summary>How many of these are a measure of how long the step took.</summary>
    public required int Measured { get; init; }

    /// <summary>Why the others are none.</summary>
    public required ImmutableArray<LearnedReason> NotMeasured { get; init; }

    /// <summary>The suggestions, in the order of files and text.</summary>
    public required ImmutableArray<Suggestion> Suggestions { get; init; }

    /// <summary>What jobs tell of and the library no longer has, each in words.</summary>
    public required ImmutableArray<string> Gone { get; init; }

    /// <summary>The jobs that tell this library nothing, each with the reason.</summary>
    public required ImmutableArray<string> LeftOut { get; init; }
}

/// <summary>The jobs of one procedure.</summary>
/// <param name="Procedure">The procedure with its arguments.</param>
/// <param name="Count">How many jobs there are.</param>
/// <param name="Closed">How many of them are closed.</param>
public sealed record LearnedJobs(string Procedure, int Count, int Closed);

/// <summary>Why ticks are no measure.</summary>
/// <param name="Count">How many ticks.</param>
/// <param name="Because">Why, in words.</param>
public sealed record LearnedReason(int Count, string Because);

/// <summary>Something that the library could say, since jobs tell it.</summary>
public sealed record Suggestion
{
    /// <summary>Its number in this document, from 1.</summary>
    public required int Number { get; init; }

    /// <summary><c>time</c>, <c>spare</c>, <c>supply</c>, <c>tool</c> or <c>note</c>.</summary>
    public required string Sort { get; init; }

    /// <summary>The file, relative to the library's root.</summary>
    public required string Path { get; init; }

    /// <summary>The line, from 1.</summary>
    public required int Line { get; init; }

    /// <summary>The column, from 1.</summary>
    public required int Column { get; init; }

    /// <summary>What stands there, in words.</summary>
    public required string About { get; init; }

    /// <summary>What is said of it now, in words.</summary>
    public required string Written { get; init; }

    /// <summary>What the jobs tell, in words.</summary>
    public required string Observed { get; init; }

    /// <summary>The jobs that tell it.</summary>
    public required ImmutableArray<string> Jobs { get; init; }

    /// <summary>Of a time, its spread over these jobs, in seconds; else null.</summary>
    public required Spread? Seconds { get; init; }

    /// <summary>What to write, as sources have it; empty where no property says it.</summary>
    public required string Write { get; init; }

    /// <summary>Whether it goes into the <c>refit { … }</c> of the block.</summary>
    public required bool OfRefit { get; init; }

    /// <summary>Why it cannot be written by itself, or what to do by hand; empty where it can.</summary>
    public required string ByHand { get; init; }
}
