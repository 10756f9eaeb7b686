using System.Collections.Immutable;
using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Procedures;

/// <summary>One step as the author wrote it, after unrolling.</summary>
public sealed record Step
{
    /// <summary>What is done.</summary>
    public required Verb Verb { get; init; }

    /// <summary>
    /// What it is done to; null for <see cref="Procedures.Verb.Measure"/>, <see cref="Procedures.Verb.Task"/>, <see
    /// cref="Procedures.Verb.Check"/>, <see cref="Procedures.Verb.Record"/> and <see cref="Procedures.Verb.Pause"/>.
    /// </summary>
    public MachineItem? Target { get; init; }

    /// <summary>How many; null for all that are there.</summary>
    public int? Count { get; init; }

    /// <summary>The position to set, an index into <see cref="Control.Positions"/>; -1 otherwise.</summary>
    public int Position { get; init; } = -1;

    /// <summary>The text of a measurement, task, check, record or pause, or the reason of a discard.</summary>
    public string? Text { get; init; }

    /// <summary>What the reading must be.</summary>
    public Limit? Expect { get; init; }

    /// <summary>Conditions written at the step.</summary>
    public ImmutableArray<Condition> Conditions { get; init; } = [];

    /// <summary>Whether other work goes on meanwhile.</summary>
    public bool InBackground { get; init; }

    /// <summary>The <c>where needed</c> that it stands under, the outermost of several; null where it is to be done whatever was done before.</summary>
    public WhereNeeded? WhereNeeded { get; init; }

    /// <summary>What its block says.</summary>
    public ActionDetails Details { get; init; } = ActionDetails.None;

    /// <summary>The alerts right before it.</summary>
    public ImmutableArray<Alert> Alerts { get; init; } = [];

    /// <summary>The verb in the text.</summary>
    public required SourceSpan VerbSpan { get; init; }

    /// <summary>The whole step in the text.</summary>
    public required SourceSpan Source { get; init; }

    /// <summary>The target in the text; the verb's span where there is none.</summary>
    public required SourceSpan TargetSpan { get; init; }

    /// <summary>The calls (<c>do</c>) that brought the step here, outermost first.</summary>
    public ImmutableArray<SourceSpan> Calls { get; init; } = [];
}
