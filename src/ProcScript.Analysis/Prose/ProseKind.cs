namespace ProcScript.Analysis.Prose;

/// <summary>What a text of the author is there for.</summary>
internal enum ProseKind
{
    /// <summary>It says what to do: <c>how</c>, <c>isolate</c>, <c>task</c> and their like.</summary>
    Instruction,

    /// <summary>It says what to look at or to measure.</summary>
    Check,

    /// <summary>It warns.</summary>
    Alert,

    /// <summary>It gives a reason.</summary>
    Description,

    /// <summary>It names something: a title, a place, what to wear.</summary>
    Label,
}
