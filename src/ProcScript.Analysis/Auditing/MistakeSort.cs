namespace ProcScript.Analysis.Auditing;

/// <summary>What is wrong with a library in which one mistake was made on purpose.</summary>
public enum MistakeSort
{
    /// <summary>A procedure lacks one of its steps.</summary>
    StepLeftOut,

    /// <summary>A procedure or a fact names the same item of another place: left for right.</summary>
    OtherPlace,

    /// <summary>A machine lacks something that was said of an item: what it is behind, what it needs, what it is on or carries.</summary>
    FactLeftOut,
}
