using System.Buffers;
using System.Globalization;
using System.IO.Pipelines;
using System.Text;
using StreamJsonRpc;
using StreamJsonRpc.Protocol;

namespace ProcScript.LanguageServer.Serving;

/// <summary>
/// Reads and writes messages with their length in front. The library's own handler gives the connection up at the first message that it
/// cannot understand; this one answers it with an error and reads the next.
/// </summary>
internal sealed class ForgivingMessageHandler(Stream output, Stream input, IJsonRpcMessageFormatter formatter)
    : PipeMessageHandler(PipeWriter.Create(output), PipeReader.Create(input), formatter)
{
    private const string LengthField = "Content-Length:";

    /// <summary>The most bytes of one message, so that a wrong length does not fill the memory.</summary>
    private const int MostBytes = 256 << 20;

    private static ReadOnlySpan<byte> EndOfHeader => "\r\n\r\n"u8;

    /// <inheritdoc/>
    protected override async ValueTask<JsonRpcMessage?> ReadCoreAsync(CancellationToken cancellationToken)
    {
        while (await ReadHeaderAsync(cancellationToken).ConfigureAwait(false) is { } header)
        {
            if (LengthIn(header) is not { } length)
            {
                await AnswerAsync(JsonRpcErrorCode.InvalidRequest, "A header without a proper Content-Length.", cancellationToken).ConfigureAwait(false);
                continue;
            }

            if (await ReadBodyAsync(length, cancellationToken).ConfigureAwait(false) is not { } body)
            {
                return null;
            }

            try
            {
                return Formatter.Deserialize(new ReadOnlySequence<byte>(body));
            }
            catch (Exception failure) when (failure is not OutOfMemoryException)
            {
                await AnswerAsync(JsonRpcErrorCode.ParseError, $"A message that is no JSON-RPC: {failure.Message}", cancellationToken).ConfigureAwait(false);
            }
        }

        return null;
    }

    /// <inheritdoc/>
    protected override void Write(JsonRpcMessage content, CancellationToken cancellationToken)
    {
        var body = new ArrayBufferWriter<byte>();
        Formatter.Serialize(body, content);
        var writer = Writer!;
        writer.Write(Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{LengthField} {body.WrittenCount}\r\n\r\n")));
        writer.Write(body.WrittenSpan);
    }

    /// <summary>The header up to the blank line; null where the client has left.</summary>
    private async ValueTask<string?> ReadHeaderAsync(CancellationToken cancellation)
    {
        while (true)
        {
            var read = await Reader!.ReadAsync(cancellation).ConfigureAwait(false);
            if (HeaderIn(read.Buffer, out var header, out var end))
            {
                Reader.AdvanceTo(end);
                return header;
            }

            Reader.AdvanceTo(read.Buffer.Start, read.Buffer.End);
            if (read.IsCompleted)
            {
                return null;
            }
        }
    }

    private static bool HeaderIn(ReadOnlySequence<byte> buffer, out string header, out SequencePosition end)
    {
        var reader = new SequenceReader<byte>(buffer);
        var found = reader.TryReadTo(out ReadOnlySequence<byte> bytes, EndOfHeader);
        header = found ? Encoding.ASCII.GetString(bytes) : "";
        end = reader.Position;
        return found;
    }

    private static int? LengthIn(string header)
    {
        var line = header.Split("\r\n").LastOrDefault(line => line.StartsWith(LengthField, StringComparison.OrdinalIgnoreCase));
        return line is not null
            && int.TryParse(line.AsSpan(LengthField.Length).Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var length)
            && length <= MostBytes
            ? length
            : null;
    }

    /// <summary>So many bytes; null where the client leaves before it has sent them.</summary>
    private async ValueTask<byte[]?> ReadBodyAsync(int length, CancellationToken cancellation)
    {
        if (length == 0)
        {
            return [];
        }

        var read = await Reader!.ReadAtLeastAsync(length, cancellation).ConfigureAwait(false);
        if (read.Buffer.Length < length)
        {
            Reader.AdvanceTo(read.Buffer.End);
            return null;
        }

        var body = read.Buffer.Slice(0, length);
        var bytes = body.ToArray();
        Reader.AdvanceTo(body.End);
        return bytes;
    }

    private ValueTask AnswerAsync(JsonRpcErrorCode code, string message, CancellationToken cancellation) => WriteAsync(
        new JsonRpcError { RequestId = RequestId.Null, Error = new JsonRpcError.ErrorDetail { Code = code, Message = message } },
        cancellation);
}
