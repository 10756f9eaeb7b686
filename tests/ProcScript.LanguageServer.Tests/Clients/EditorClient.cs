using System.Diagnostics;
using System.Globalization;
using System.IO.Pipelines;
using System.Text;
using System.Text.Json.Nodes;
using System.Threading.Channels;
using Nerdbank.Streams;
using ProcScript.Cli.Sources;

namespace ProcScript.LanguageServer.Tests.Clients;

/// <summary>A client over the standard input and output of the whole program, written apart from the server.</summary>
internal sealed class EditorClient : IAsyncDisposable
{
    /// <summary>Another program to test, such as the native one.</summary>
    private const string ProgramVariable = "PROCSCRIPT_PROGRAM";

    private static readonly TimeSpan Hang = TimeSpan.FromSeconds(60);

    private readonly Process? _process;
    private readonly Stream _input;
    private readonly Stream _output;
    private readonly Task<bool>? _serving;
    private readonly Dictionary<int, TaskCompletionSource<JsonNode>> _waiting = [];
    private readonly Channel<JsonNode> _notifications = Channel.CreateUnbounded<JsonNode>();
    private readonly List<JsonNode> _unmatched = [];
    private readonly Task _reading;
    private int _lastId;

    private EditorClient(Process process)
        : this(process.StandardInput.BaseStream, process.StandardOutput.BaseStream) => _process = process;

    private EditorClient(IDuplexPipe near, Task<bool> serving)
        : this(near.Output.AsStream(), near.Input.AsStream()) => _serving = serving;

    private EditorClient(Stream input, Stream output)
    {
        (_input, _output) = (input, output);
        _reading = Task.Run(ReadAllAsync);
    }

    /// <summary>What the server said it can do.</summary>
    public JsonNode Capabilities { get; private set; } = new JsonObject();

    public Process Process => _process ?? throw new InvalidOperationException("The server has no process of its own.");

    /// <summary>A client that has said nothing yet.</summary>
    /// <param name="inProcess">
    /// Whether the server may be one of its own in this process, which saves the start of another program: it is served by the same call
    /// that the program makes. Where another program is named, or everything is asked for, it is a process all the same.
    /// </param>
    public static EditorClient StartRaw(bool inProcess = true)
    {
        var native = Environment.GetEnvironmentVariable(ProgramVariable);
        if (inProcess && native is null && !Depth.IsWhole)
        {
            var (near, far) = FullDuplexStream.CreatePipePair();
            return new EditorClient(near, Task.Run(() => ServeAsync(far)));
        }

        ProcessStartInfo start = native is null
            ? new("dotnet", [Path.Combine(AppContext.BaseDirectory, "procscript.dll"), "server", "--stdio"])
            : new(native, ["server", "--stdio"]);
        start.RedirectStandardInput = start.RedirectStandardOutput = start.RedirectStandardError = true;
        return new EditorClient(Process.Start(start)!);
    }

    /// <summary>A client that is ready to work in a folder.</summary>
    /// <param name="folder">The folder of the library, if there is one.</param>
    /// <param name="capabilities">What the client can do.</param>
    /// <param name="inProcess">As for <see cref="StartRaw"/>.</param>
    public static async Task<EditorClient> StartAsync(string? folder, JsonObject? capabilities = null, bool inProcess = true)
    {
        var client = StartRaw(inProcess);
        await client.InitializeAsync(folder, capabilities);
        return client;
    }

    private static async Task<bool> ServeAsync(IDuplexPipe far)
    {
        using var host = new EditorHost(() => DateOnly.FromDateTime(TimeProvider.System.GetLocalNow().DateTime));
        await using var input = far.Input.AsStream();
        await using var output = far.Output.AsStream();
        return await EditorServer.RunAsync(input, output, host, CancellationToken.None);
    }

    public async Task InitializeAsync(string? folder, JsonObject? capabilities = null)
    {
        var result = await RequestAsync("initialize", new JsonObject
        {
            ["processId"] = Environment.ProcessId,
            ["rootUri"] = null,
            ["workspaceFolders"] = folder is null ? new JsonArray() : new JsonArray(new JsonObject { ["uri"] = UriOf(folder), ["name"] = "library" }),
            ["capabilities"] = capabilities ?? new JsonObject
            {
                ["textDocument"] = new JsonObject { ["documentSymbol"] = new JsonObject { ["hierarchicalDocumentSymbolSupport"] = true } },
            },
        });
        Capabilities = result!["capabilities"]!;
        Notify("initialized", new JsonObject());
    }

    public static string UriOf(string path) => new Uri(path).AbsoluteUri;

    /// <summary>The result of a request; fails where the answer is an error.</summary>
    public async Task<JsonNode?> RequestAsync(string method, JsonNode? parameters)
    {
        var answer = await AnswerAsync(method, parameters);
        Assert.True(answer["error"] is null, $"{method}: {answer.ToJsonString()}");
        return answer["result"];
    }

    /// <summary>The error code of a request that must fail.</summary>
    public async Task<int> ErrorAsync(string method, JsonNode? parameters) =>
        (await AnswerAsync(method, parameters))["error"]?["code"]?.GetValue<int>() ?? throw new InvalidOperationException($"{method} did not fail.");

    public Task<JsonNode> AnswerAsync(string method, JsonNode? parameters) => Send(method, parameters).Task.WaitAsync(Hang, TestContext.Current.CancellationToken);

    public (int Id, Task<JsonNode> Task) Send(string method, JsonNode? parameters)
    {
        var id = ++_lastId;
        var source = new TaskCompletionSource<JsonNode>(TaskCreationOptions.RunContinuationsAsynchronously);
        lock (_waiting)
        {
            _waiting[id] = source;
        }

        Write(new JsonObject { ["jsonrpc"] = "2.0", ["id"] = id, ["method"] = method, ["params"] = parameters });
        return (id, source.Task);
    }

    public void Notify(string method, JsonNode? parameters) =>
        Write(new JsonObject { ["jsonrpc"] = "2.0", ["method"] = method, ["params"] = parameters });

    /// <summary>Sends bytes as they are.</summary>
    public void SendBytes(string text) => SendBytes(Encoding.UTF8.GetBytes(text));

    /// <summary>Sends bytes as they are.</summary>
    public void SendBytes(byte[] bytes)
    {
        _input.Write(bytes);
        _input.Flush();
    }

    /// <summary>The next message of the server that fits; earlier ones that do not fit wait for others.</summary>
    public async Task<JsonNode> NextAsync(Func<JsonNode, bool> fits)
    {
        using var hang = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        hang.CancelAfter(Hang);
        if (_unmatched.Find(message => fits(message)) is { } earlier)
        {
            _unmatched.Remove(earlier);
            return earlier;
        }

        while (true)
        {
            var message = await _notifications.Reader.ReadAsync(hang.Token);
            if (fits(message))
            {
                return message;
            }

            _unmatched.Add(message);
        }
    }

    /// <summary>The next message that fits among those that have come; null where there is none.</summary>
    public JsonNode? TryNext(Func<JsonNode, bool> fits)
    {
        while (_notifications.Reader.TryRead(out var message))
        {
            _unmatched.Add(message);
        }

        var found = _unmatched.Find(message => fits(message));
        if (found is not null)
        {
            _unmatched.Remove(found);
        }

        return found;
    }

    /// <summary>The exit code once the process has ended.</summary>
    public async Task<int> EndAsync()
    {
        await Process.WaitForExitAsync(TestContext.Current.CancellationToken).WaitAsync(Hang, TestContext.Current.CancellationToken);
        return Process.ExitCode;
    }

    public async ValueTask DisposeAsync()
    {
        if (_serving is not null)
        {
            // As when an editor dies; a server that fell over is the test's failure.
            await _input.DisposeAsync();
            await _serving.WaitAsync(Hang);
        }
        else if (_process is { HasExited: false })
        {
            _process.Kill();
        }

        await _reading;
        _process?.Dispose();
    }

    private void Write(JsonObject message)
    {
        var body = message.ToJsonString();
        SendBytes(string.Create(CultureInfo.InvariantCulture, $"Content-Length: {Encoding.UTF8.GetByteCount(body)}\r\n\r\n{body}"));
    }

    private async Task ReadAllAsync()
    {
        while (await ReadAsync(_output) is { } message)
        {
            if (message["method"] is null && message["id"] is JsonValue id && id.TryGetValue<int>(out var number))
            {
                TaskCompletionSource<JsonNode>? source;
                lock (_waiting)
                {
                    _waiting.Remove(number, out source);
                }

                source?.SetResult(message);
            }
            else
            {
                _notifications.Writer.TryWrite(message);
            }
        }

        _notifications.Writer.Complete();
    }

    private static async Task<JsonNode?> ReadAsync(Stream stream)
    {
        var length = 0;
        while (true)
        {
            var line = new StringBuilder();
            var one = new byte[1];
            while (!line.ToString().EndsWith("\r\n", StringComparison.Ordinal))
            {
                if (await stream.ReadAsync(one) == 0)
                {
                    return null;
                }

                line.Append((char)one[0]);
            }

            if (line.Length == 2)
            {
                break;
            }

            if (line.ToString().StartsWith("Content-Length:", StringComparison.OrdinalIgnoreCase))
            {
                length = int.Parse(line.ToString()["Content-Length:".Length..].Trim(), CultureInfo.InvariantCulture);
            }
        }

        var body = new byte[length];
        await stream.ReadExactlyAsync(body);
        return JsonNode.Parse(body);
    }
}
