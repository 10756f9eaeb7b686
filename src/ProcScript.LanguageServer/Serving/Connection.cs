using System.Diagnostics.CodeAnalysis;
using System.Text.Json;
using Microsoft.VisualStudio.Threading;
using ProcScript.LanguageServer.Protocol;
using StreamJsonRpc;

namespace ProcScript.LanguageServer.Serving;

/// <summary>The line to the client.</summary>
internal sealed class Connection : IDisposable
{
    private readonly JsonRpc _rpc;

    /// <summary>A line over two streams; it is silent until <see cref="Listen"/>.</summary>
    public Connection(Stream input, Stream output) => _rpc = new JsonRpc(new ForgivingMessageHandler(output, input, Formatter()))
    {
        // What happens to a document has to happen in the order in which it was sent.
        // What a client may call follows from what it says of itself in its first message.
        AllowModificationWhileListening = true,
        SynchronizationContext = new NonConcurrentSynchronizationContext(sticky: false),
    };

    /// <summary>Ends when the client is gone.</summary>
    public Task Completion => _rpc.Completion;

    /// <summary>Begins to read.</summary>
    public void Listen() => _rpc.StartListening();

    /// <summary>Adds a method that the client may call.</summary>
    public void Add(string method, Delegate handler) => _rpc.AddLocalRpcMethod(
        handler.Method,
        handler.Target,
        new JsonRpcMethodAttribute(method) { UseSingleObjectParameterDeserialization = true });

    /// <summary>Tells the client something.</summary>
    public void Notify<TParams>(string method, TParams parameters)
        where TParams : notnull => _ = Quietly(_rpc.NotifyWithParameterObjectAsync(method, Named(parameters), null));

    /// <summary>Asks the client for something and does not wait for the answer.</summary>
    public void Ask<TParams>(string method, TParams parameters)
        where TParams : notnull => _ = Quietly(_rpc.InvokeWithParameterObjectAsync<JsonElement>(method, Named(parameters), null, CancellationToken.None));

    /// <summary>Asks the client for something that takes no parameters, and does not wait for the answer.</summary>
    public void Ask(string method) => _ = Quietly(_rpc.InvokeWithParameterObjectAsync<JsonElement>(method, new Dictionary<string, object?>(), null, CancellationToken.None));

    /// <inheritdoc/>
    public void Dispose() => _rpc.Dispose();

    /// <summary>The parameters by name, written with generated code: the library would look at the object by reflection.</summary>
    private static Dictionary<string, object?> Named<TParams>(TParams parameters)
        where TParams : notnull =>
        JsonSerializer.SerializeToElement(parameters, ProtocolJson.Default.GetTypeInfo(typeof(TParams))!)
            .EnumerateObject()
            .ToDictionary(property => property.Name, property => (object?)property.Value, StringComparer.Ordinal);

    [UnconditionalSuppressMessage("Trimming", "IL2026", Justification = "Every message has generated type information; none is found by reflection.")]
    [UnconditionalSuppressMessage("AOT", "IL3050", Justification = "Every message has generated type information; none is found by reflection.")]
    private static SystemTextJsonFormatter Formatter() => new() { JsonSerializerOptions = ProtocolJson.ForConnection() };

    /// <summary>A client that cannot be told any more, or will not do what it was asked, is no fault.</summary>
    private static async Task Quietly(Task task)
    {
        try
        {
            await task.ConfigureAwait(false);
        }
        catch (Exception failure) when (failure is RemoteRpcException or ConnectionLostException or ObjectDisposedException or OperationCanceledException or IOException)
        {
            // Nobody is there to be told.
        }
    }
}
