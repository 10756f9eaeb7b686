namespace ProcScript.Cli.Tests;

/// <summary>Surroundings that a test makes up.</summary>
internal static class InMemory
{
    public static Surroundings Surroundings(string currentFolder, TextWriter output, TextWriter? error = null, byte[]? input = null) => new()
    {
        Output = output,
        Error = error ?? TextWriter.Null,
        OpenInput = () => new MemoryStream(input ?? []),
        OpenOutput = () => Stream.Null,
        CurrentFolder = currentFolder,
        Variable = _ => null,
        Clock = new StoppedClock(),
        OutputIsTerminal = false,
    };
}
