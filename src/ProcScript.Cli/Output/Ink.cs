namespace ProcScript.Cli.Output;

/// <summary>What a stretch of output is, which decides its colour.</summary>
internal enum Ink
{
    /// <summary>The reader's own text.</summary>
    Plain,

    /// <summary>The message.</summary>
    Strong,

    /// <summary>An error and the marks under it.</summary>
    Error,

    /// <summary>A warning and the marks under it.</summary>
    Warning,

    /// <summary>A hint and the marks under it.</summary>
    Hint,

    /// <summary>Line numbers, bars, arrows, and marks under the other places.</summary>
    Frame,

    /// <summary>A line that a fix takes away.</summary>
    Removed,

    /// <summary>A line that a fix brings.</summary>
    Added,
}
