using System.Collections.Immutable;
using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Procedures;

/// <summary>A refit action that a rule names.</summary>
/// <param name="Verb">The refit verb.</param>
/// <param name="Target">Its target.</param>
/// <param name="Source">Where it is written.</param>
public sealed record RefitAnchor(Verb Verb, MachineItem Target, SourceSpan Source);

/// <summary>A line of a <c>refit</c> block.</summary>
/// <param name="Source">Where it is written.</param>
public abstract record RefitRule(SourceSpan Source)
{
    /// <summary>The calls (<c>do</c>) that brought the rule here, outermost first.</summary>
    public ImmutableArray<SourceSpan> Calls { get; init; } = [];
}

/// <summary><c>fit a before fit b</c> (<c>after</c> is turned round).</summary>
/// <param name="Earlier">What goes first.</param>
/// <param name="Later">What goes later.</param>
/// <param name="Source">Where it is written.</param>
public sealed record OrderRule(RefitAnchor Earlier, RefitAnchor Later, SourceSpan Source) : RefitRule(Source);

/// <summary>A check within the refit.</summary>
/// <param name="Text">What is checked.</param>
/// <param name="Expect">What the reading must be.</param>
/// <param name="Conditions">What must be true.</param>
/// <param name="Before">The action that comes after it.</param>
/// <param name="After">The action that comes before it.</param>
/// <param name="Alerts">The alerts right before it.</param>
/// <param name="Source">Where it is written.</param>
public sealed record CheckRule(
    string Text,
    Limit? Expect,
    ImmutableArray<Condition> Conditions,
    RefitAnchor? Before,
    RefitAnchor? After,
    ImmutableArray<Alert> Alerts,
    SourceSpan Source) : RefitRule(Source);
