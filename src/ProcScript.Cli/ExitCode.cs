namespace ProcScript.Cli;

/// <summary>What the caller's script learns. The numbers are a promise: scripts depend on them.</summary>
internal enum ExitCode
{
    /// <summary>All is well.</summary>
    Clean = 0,

    /// <summary>There are findings that are to fail the run.</summary>
    Findings = 1,

    /// <summary>It was called wrongly, or could not read its input or write its output.</summary>
    Usage = 2,

    /// <summary>A fault of this program.</summary>
    Bug = 3,

    /// <summary>Ctrl-C.</summary>
    Interrupted = 130,

    /// <summary>The system asked it to end.</summary>
    Terminated = 143,
}
