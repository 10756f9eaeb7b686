using System.Text;

namespace ProcScript.Cli;

/// <summary>All that a run takes from the process around it, so that a test can give its own.</summary>
internal sealed record Surroundings
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Where findings and answers go.</summary>
    public required TextWriter Output { get; init; }

    /// <summary>Where it says why it could not do its work.</summary>
    public required TextWriter Error { get; init; }

    /// <summary>What <c>-</c> reads.</summary>
    public required Func<Stream> OpenInput { get; init; }

    /// <summary>The output as bytes, for a command that writes no text.</summary>
    public required Func<Stream> OpenOutput { get; init; }

    /// <summary>The folder that relative paths start from, as a full path.</summary>
    public required string CurrentFolder { get; init; }

    /// <summary>The value of an environment variable, or null.</summary>
    public required Func<string, string?> Variable { get; init; }

    /// <summary>The date and the time.</summary>
    public required TimeProvider Clock { get; init; }

    /// <summary>Today, by universal time: the same check says the same wherever it runs.</summary>
    public DateOnly Today => DateOnly.FromDateTime(Clock.GetUtcNow().Date);

    /// <summary>Whether the output is read by a person at a terminal.</summary>
    public required bool OutputIsTerminal { get; init; }

    /// <summary>Whether what goes beside the output is read by a person at a terminal.</summary>
    public bool ErrorIsTerminal { get; init; }

    /// <summary>
    /// Those of this process. Output is UTF-8 wherever it goes: the console's own writer would follow the locale, and the same
    /// run must give the same bytes.
    /// </summary>
    public static Surroundings OfThisProcess()
    {
        if (!Console.IsOutputRedirected && OperatingSystem.IsWindows())
        {
            Console.OutputEncoding = Utf8;
        }

        return new Surroundings
        {
            Output = Writer(StandardStreams.OpenOutput()),
            Error = Writer(StandardStreams.OpenError()),
            OpenInput = StandardStreams.OpenInput,
            OpenOutput = StandardStreams.OpenOutput,
            CurrentFolder = Environment.CurrentDirectory,
            Variable = Environment.GetEnvironmentVariable,
            Clock = TimeProvider.System,
            OutputIsTerminal = !Console.IsOutputRedirected,
            ErrorIsTerminal = !Console.IsErrorRedirected,
        };
    }

    private static StreamWriter Writer(Stream stream) => new(stream, Utf8, bufferSize: 1 << 16) { NewLine = "\n" };
}
