namespace ProcScript.Cli.Output;

/// <summary>When to print in colour.</summary>
internal enum ColourChoice
{
    /// <summary>On a terminal, unless <c>NO_COLOR</c> is set.</summary>
    Auto,

    /// <summary>Also into a file or a pipe.</summary>
    Always,

    /// <summary>Never.</summary>
    Never,
}
