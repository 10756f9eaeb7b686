using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;

namespace ProcScript.Bench.Editing;

/// <summary>A client that sends a message and waits for one that fits: no more than a stopwatch needs.</summary>
internal sealed class EditorSession : IDisposable
{
    private readonly Process _process;
    private int _lastId;

    /// <summary>Starts the server for a folder.</summary>
    public EditorSession(IReadOnlyList<string> program, string folder)
    {
        ProcessStartInfo start = new(program[0], program.Skip(1).Append("server")) { RedirectStandardInput = true, RedirectStandardOutput = true };
        _process = Process.Start(start) ?? throw new InvalidOperationException($"{program[0]} did not start.");
        Ask("initialize", new JsonObject
        {
            ["processId"] = Environment.ProcessId,
            ["workspaceFolders"] = new JsonArray(new JsonObject { ["uri"] = new Uri(folder).AbsoluteUri, ["name"] = "library" }),
            ["capabilities"] = new JsonObject(),
        });
        Tell("initialized", new JsonObject());
    }

    /// <summary>The memory that is resident.</summary>
    public double Megabytes
    {
        get
        {
            _process.Refresh();
            return _process.WorkingSet64 / 1048576.0;
        }
    }

    /// <summary>The time that the server took of all processors.</summary>
    public TimeSpan ProcessorTime
    {
        get
        {
            _process.Refresh();
            return _process.TotalProcessorTime;
        }
    }

    /// <summary>Sends a notification.</summary>
    public void Tell(string method, JsonObject parameters) =>
        Write(new JsonObject { ["jsonrpc"] = "2.0", ["method"] = method, ["params"] = parameters });

    /// <summary>Sends a request and waits for its answer.</summary>
    public JsonNode Ask(string method, JsonObject parameters)
    {
        var id = ++_lastId;
        Write(new JsonObject { ["jsonrpc"] = "2.0", ["id"] = id, ["method"] = method, ["params"] = parameters });
        return Await(message => message["method"] is null && message["id"]?.GetValue<int>() == id);
    }

    /// <summary>Reads messages until one fits.</summary>
    public JsonNode Await(Func<JsonNode, bool> fits)
    {
        while (true)
        {
            var message = Read();
            if (fits(message))
            {
                return message["error"] is null ? message : throw new InvalidOperationException(message.ToJsonString());
            }
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _process.Kill();
        _process.Dispose();
    }

    private void Write(JsonObject message)
    {
        var body = Encoding.UTF8.GetBytes(message.ToJsonString());
        var stream = _process.StandardInput.BaseStream;
        stream.Write(Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"Content-Length: {body.Length}\r\n\r\n")));
        stream.Write(body);
        stream.Flush();
    }

    private JsonNode Read()
    {
        var stream = _process.StandardOutput.BaseStream;
        var header = new StringBuilder();
        while (!header.ToString().EndsWith("\r\n\r\n", StringComparison.Ordinal))
        {
            var next = stream.ReadByte();
            header.Append(next < 0 ? throw new InvalidOperationException("The server has ended.") : (char)next);
        }

        var length = header.ToString().Split("\r\n").First(line => line.StartsWith("Content-Length:", StringComparison.Ordinal))["Content-Length:".Length..];
        var body = new byte[int.Parse(length, CultureInfo.InvariantCulture)];
        stream.ReadExactly(body);
        return JsonNode.Parse(body)!;
    }
}
