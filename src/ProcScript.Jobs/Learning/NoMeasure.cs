namespace ProcScript.Jobs.Learning;

/// <summary>Why the time between two ticks of a person does not measure a step.</summary>
public enum NoMeasure
{
    /// <summary>Nobody knows when it was begun: it is the first that somebody ticked.</summary>
    First,

    /// <summary>Several steps were ticked at once, after the fact.</summary>
    AtOnce,

    /// <summary>It was begun before the work was handed over, or before a stop that nobody said the end of.</summary>
    Stopped,

    /// <summary>Something runs, cures or waits by itself in that time.</summary>
    Waiting,

    /// <summary>It is too long for the step: something else came between.</summary>
    TooLong,

    /// <summary>The step was undone again, or something was undone before it.</summary>
    Undone,

    /// <summary>Something that is no step was done in that time, or new cards were made.</summary>
    OtherWork,

    /// <summary>Another number of pieces was moved than the step says.</summary>
    OtherCount,
}
