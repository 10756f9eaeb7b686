using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;

namespace ProcScript.Floor.Tests.Browsers;

/// <summary>The line between a tablet and the server, which can be cut as a network drops: nothing comes through, and nobody says so.</summary>
internal sealed class CutLine : IAsyncDisposable
{
    private readonly int _to;
    private readonly ConcurrentBag<Socket> _open = [];
    private readonly CancellationTokenSource _stop = new();
    private TcpListener? _listener;

    public CutLine(Uri to)
    {
        _to = to.Port;
        Begin(0);
        Port = ((IPEndPoint)_listener!.LocalEndpoint).Port;
    }

    /// <summary>The tablet's end.</summary>
    public int Port { get; }

    /// <summary>An address at the tablet's end.</summary>
    public string At(string path) => $"http://127.0.0.1:{Port}{path}";

    /// <summary>Cuts it.</summary>
    public void Cut()
    {
        _listener?.Dispose();
        _listener = null;
        while (_open.TryTake(out var socket))
        {
            socket.Close(0);
        }
    }

    /// <summary>Mends it.</summary>
    public void Mend() => Begin(Port);

    public async ValueTask DisposeAsync()
    {
        await _stop.CancelAsync();
        Cut();
        _stop.Dispose();
    }

    private void Begin(int port)
    {
        _listener = new TcpListener(IPAddress.Loopback, port);
        _listener.Server.SetSocketOption(SocketOptionLevel.Socket, SocketOptionName.ReuseAddress, true);
        _listener.Start();
        _ = AcceptAsync(_listener);
    }

    private async Task AcceptAsync(TcpListener listener)
    {
        try
        {
            while (true)
            {
                _ = CarryAsync(await listener.AcceptSocketAsync(_stop.Token));
            }
        }
        catch (Exception failure) when (failure is SocketException or ObjectDisposedException or OperationCanceledException)
        {
            // It was cut.
        }
    }

    private async Task CarryAsync(Socket tablet)
    {
        _open.Add(tablet);
        Socket server = new(SocketType.Stream, ProtocolType.Tcp);
        _open.Add(server);
        try
        {
            await server.ConnectAsync(IPAddress.Loopback, _to);
            await using NetworkStream there = new(server, ownsSocket: true);
            await using NetworkStream here = new(tablet, ownsSocket: true);
            await Task.WhenAny(here.CopyToAsync(there, _stop.Token), there.CopyToAsync(here, _stop.Token));
        }
        catch (Exception failure) when (failure is SocketException or IOException or ObjectDisposedException or OperationCanceledException)
        {
            // It was cut.
        }
    }
}
