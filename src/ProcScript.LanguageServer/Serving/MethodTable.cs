using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using ProcScript.LanguageServer.Protocol;
using StreamJsonRpc;
using StreamJsonRpc.Protocol;

namespace ProcScript.LanguageServer.Serving;

/// <summary>The methods that the client may call, each behind the rules of the protocol's life cycle.</summary>
/// <param name="connection">The line to the client.</param>
/// <param name="lifecycle">How far the session is.</param>
internal sealed class MethodTable(Connection connection, Lifecycle lifecycle)
{
    /// <summary>Adds a request. What it reads of documents it must read before it first waits.</summary>
    public void Request<TParams, TResult>(string method, Func<TParams, CancellationToken, Task<TResult>> handler) =>
        connection.Add(method, async (JsonElement parameters, CancellationToken cancellation) =>
        {
            lifecycle.Demand();
            var read = Read<TParams>(method, parameters);
            return await Guarded(method, () => handler(read, cancellation)).ConfigureAwait(false);
        });

    /// <summary>Adds the first request, which may come but once.</summary>
    public void First<TParams, TResult>(string method, Func<TParams, TResult> handler) =>
        connection.Add(method, async (JsonElement parameters, CancellationToken _) =>
        {
            var read = Read<TParams>(method, parameters);
            lifecycle.Begin();
            return await Guarded(method, () => Task.FromResult(handler(read))).ConfigureAwait(false);
        });

    /// <summary>Adds a notification; one that comes too early or too late is dropped.</summary>
    public void Notification<TParams>(string method, Action<TParams> handler) =>
        connection.Add(method, (JsonElement parameters) =>
        {
            if (!lifecycle.IsServing)
            {
                return;
            }

            try
            {
                handler(Read<TParams>(method, parameters));
            }
            catch (LocalRpcException wrong)
            {
                connection.Notify("window/logMessage", new LogMessageParams(LogMessageParams.Warning, wrong.Message));
            }
            catch (Exception fault) when (fault is not OperationCanceledException)
            {
                connection.Notify("window/logMessage", new LogMessageParams(LogMessageParams.Error, Told(method, fault)));
            }
        });

    /// <summary>Parameters are read here and not by the library, which ends the connection where they do not fit.</summary>
    private static TParams Read<TParams>(string method, JsonElement parameters)
    {
        try
        {
            var type = (JsonTypeInfo<TParams>)ProtocolJson.Default.GetTypeInfo(typeof(TParams))!;
            var read = parameters.ValueKind == JsonValueKind.Undefined ? default : parameters.Deserialize(type);
            return read ?? throw new JsonException("There are none.");
        }
        catch (JsonException failure)
        {
            throw new LocalRpcException($"{method}: parameters that do not fit: {failure.Message}") { ErrorCode = (int)JsonRpcErrorCode.InvalidParams };
        }
    }

    private static async Task<TResult> Guarded<TResult>(string method, Func<Task<TResult>> handler)
    {
        try
        {
            return await handler().ConfigureAwait(false);
        }
        catch (RequestRefusedException refusal)
        {
            throw new LocalRpcException(refusal.Message) { ErrorCode = RequestRefusedException.Code };
        }
        catch (Exception fault) when (fault is not (OperationCanceledException or LocalRpcException))
        {
            throw new LocalRpcException(Told(method, fault)) { ErrorCode = (int)JsonRpcErrorCode.InternalError };
        }
    }

    private static string Told(string method, Exception fault) =>
        $"{method}: internal error, {fault.GetType().Name}: {fault.Message} This is a fault of procscript, please report it.";
}
