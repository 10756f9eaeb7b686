using System.Collections.Immutable;

namespace ProcScript.Analysis.Auditing;

/// <summary>Why nothing notices a mistake.</summary>
public enum SurvivalReason
{
    /// <summary>No proven job acts on the item that the fact is about.</summary>
    ItemUntouched,

    /// <summary>Jobs act on the item, and none on what the fact names: that stays where it is.</summary>
    NamedUntouched,

    /// <summary>Jobs lean on the fact, and wherever they do something else asks for the same.</summary>
    AskedElsewhere,

    /// <summary>Jobs act on both, and no step of them asks for what the fact says.</summary>
    NeverAsked,

    /// <summary>The job comes out as it is without the step or with the other place: what is missing is put in, or was done already.</summary>
    SameJob,

    /// <summary>All can be done, and a pack says something else.</summary>
    PackOnly,
}

/// <summary>Why nothing notices a mistake, with what there is to show for it.</summary>
/// <param name="Reason">The reason.</param>
/// <param name="By">The step that asks for the same, such as <c>undo hub_bolts</c>; empty where there is none.</param>
/// <param name="PackParts">What a pack says otherwise, such as <c>refit</c>; empty where all is the same.</param>
public sealed record Survival(SurvivalReason Reason, string By, ImmutableArray<string> PackParts);
