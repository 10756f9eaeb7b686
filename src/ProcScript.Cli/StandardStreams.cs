using System.Globalization;

namespace ProcScript.Cli;

/// <summary>
/// The streams that a process is handed. One that was closed before it began is replaced by the runtime with a pipe of its own under the same
/// number: whoever read it would wait for ever, and whoever wrote to it would upset the runtime.
/// </summary>
internal static class StandardStreams
{
    // What a process opens for itself is closed when it starts another program; what it was handed cannot be.
    private const int ClosedOnStart = 0x80000;

    /// <summary>The standard input.</summary>
    /// <exception cref="IOException">It is closed.</exception>
    public static Stream OpenInput() => IsClosed(0)
        ? throw new IOException("The standard input is closed; hand a text in, as in 'procscript check - < FILE'.")
        : Console.OpenStandardInput();

    /// <summary>The output; one that was closed fails when something is written to it.</summary>
    public static Stream OpenOutput() => IsClosed(1) ? new ClosedStream() : Console.OpenStandardOutput();

    /// <summary>The error stream; what is said to a closed one nobody hears.</summary>
    public static Stream OpenError() => IsClosed(2) ? Stream.Null : Console.OpenStandardError();

    private static bool IsClosed(int number)
    {
        if (!OperatingSystem.IsLinux())
        {
            return false;
        }

        try
        {
            const string name = "flags:";
            var about = File.ReadLines(string.Create(CultureInfo.InvariantCulture, $"/proc/self/fdinfo/{number}"));
            return about.FirstOrDefault(line => line.StartsWith(name, StringComparison.Ordinal)) is { } flags
                && (Convert.ToInt64(flags[name.Length..].Trim(), 8) & ClosedOnStart) != 0;
        }
        catch (FileNotFoundException)
        {
            return Directory.Exists("/proc/self/fdinfo");
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or FormatException)
        {
            return false;
        }
    }

    private sealed class ClosedStream : Stream
    {
        public override bool CanRead => false;

        public override bool CanSeek => false;

        public override bool CanWrite => true;

        public override long Length => throw new NotSupportedException();

        public override long Position
        {
            get => throw new NotSupportedException();
            set => throw new NotSupportedException();
        }

        public override void Flush()
        {
        }

        public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new IOException("it is closed.");
    }
}
