using System.Net;
using System.Security.Cryptography.X509Certificates;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using ProcScript.Floor.Desk;
using ProcScript.Floor.Doors;
using ProcScript.Floor.Endpoints;
using ProcScript.Floor.Index;
using ProcScript.Floor.Logs;
using ProcScript.Jobs.Stores;

namespace ProcScript.Floor;

/// <summary>The server, from its start to its end.</summary>
public sealed class FloorServer : IAsyncDisposable
{
    private const int MostConnections = 1_000;
    private const int LongestRequestLine = 4 * 1024;
    private const int LongestHeaders = 16 * 1024;
    private const int LongestBody = 64 << 20;
    private const double LeastBytesASecond = 500;

    private static readonly TimeSpan Grace = TimeSpan.FromSeconds(3);
    private static readonly TimeSpan HeaderPatience = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan EndPatience = TimeSpan.FromSeconds(3);

    private readonly WebApplication _app;

    private FloorServer(WebApplication app, PairingDesk pairing, X509Certificate2? certificate, IReadOnlyList<string> addresses) =>
        (_app, Pairing, Certificate, Addresses) = (app, pairing, certificate, addresses);

    /// <summary>Holds the code by which tablets are paired.</summary>
    public PairingDesk Pairing { get; }

    /// <summary>The certificate; null where this machine alone is served.</summary>
    public X509Certificate2? Certificate { get; }

    /// <summary>The addresses of the board, each with a <c>/</c> at its end.</summary>
    public IReadOnlyList<string> Addresses { get; }

    /// <summary>Starts a server.</summary>
    /// <param name="options">How.</param>
    /// <param name="store">Where the jobs are kept.</param>
    /// <param name="faults">Where it says what it refuses.</param>
    /// <param name="stop">Ends the start.</param>
    /// <exception cref="IOException">It cannot listen there.</exception>
    public static async Task<FloorServer> StartAsync(FloorOptions options, IJobStore store, TextWriter faults, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(options);
        var clock = TimeProvider.System;
        OwnerFile.MakeFolder(options.OwnFolder);
        var hosts = HostNames.Of(options);
        var certificate = options.Lan ? OwnCertificate.Of(options, hosts.All, clock) : null;
        var log = new RefusalLog(Path.Combine(options.OwnFolder, "refused.jsonl"), TextWriter.Synchronized(faults), clock);
        var pairing = new PairingDesk(clock);
        var tokens = options.Pairing ? SessionTokens.In(Path.Combine(options.OwnFolder, "pairing.key"), clock) : null;
        // Cookies of one machine are told apart by their names, not by ports.
        var cookie = options.Lan ? "__Host-floor" : $"floor-{options.Port}";
        var feed = new ChangeFeed();
        var board = new ShopBoard(store, IndexOf(options, faults), feed, clock);
        var desk = new JobDesk(store, board, clock);

        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory });
        builder.Logging.ClearProviders();
        builder.Logging.AddProvider(new BadRequestLog(log));
        builder.Logging.SetMinimumLevel(LogLevel.Warning).AddFilter(BadRequestLog.Category, LogLevel.Debug);
        builder.Services.AddHostedService(_ => new LookingAround(board, clock, faults));
        builder.Services.Configure<HostOptions>(host => host.ShutdownTimeout = EndPatience);
        builder.WebHost.UseKestrelHttpsConfiguration();
        builder.WebHost.ConfigureKestrel(kestrel => Configure(kestrel, options, certificate));
        var app = builder.Build();
        var doorkeeper = new Doorkeeper(hosts, tokens, cookie, log);
        app.Use(next => context => doorkeeper.PassAsync(context, next));
        app.UseRouting();
        new PageFiles().Map(app);
        new PairEndpoints(pairing, tokens, cookie, clock).Map(app);
        new JobEndpoints(desk, board, log).Map(app);
        new PhotoEndpoints(store, desk).Map(app);
        new FigureEndpoint(desk).Map(app);
        new StreamEndpoint(feed, app.Lifetime.ApplicationStopping).Map(app);
        try
        {
            await app.StartAsync(stop);
        }
        catch
        {
            await app.DisposeAsync();
            throw;
        }

        return new FloorServer(app, pairing, certificate, AddressesOf(options, app));
    }

    /// <summary>Ends when the server is told to stop.</summary>
    /// <param name="stop">Stops it.</param>
    public Task Stopped(CancellationToken stop) => _app.WaitForShutdownAsync(stop);

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await _app.DisposeAsync();
        Certificate?.Dispose();
    }

    private static BoardIndex? IndexOf(FloorOptions options, TextWriter faults)
    {
        if (options.IndexFile is not { } file)
        {
            return null;
        }

        BoardIndex index = new(file, options.Jobs, faults);
        if (options.RebuildIndex)
        {
            index.Delete();
        }

        return index;
    }

    private static void Configure(KestrelServerOptions kestrel, FloorOptions options, X509Certificate2? certificate)
    {
        kestrel.AddServerHeader = false;
        kestrel.Limits.MaxConcurrentConnections = MostConnections;
        kestrel.Limits.MaxRequestBodySize = LongestBody;
        kestrel.Limits.MaxRequestLineSize = LongestRequestLine;
        kestrel.Limits.MaxRequestHeadersTotalSize = LongestHeaders;
        kestrel.Limits.RequestHeadersTimeout = HeaderPatience;
        kestrel.Limits.MinRequestBodyDataRate = new MinDataRate(LeastBytesASecond, Grace);
        if (certificate is null)
        {
            kestrel.Listen(IPAddress.Loopback, options.Port);
        }
        else
        {
            kestrel.ListenAnyIP(options.Port, listen => listen.UseHttps(certificate));
        }
    }

    private static List<string> AddressesOf(FloorOptions options, WebApplication app)
    {
        var bound = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First();
        var port = new Uri(bound.Replace("[::]", "localhost", StringComparison.Ordinal)).Port;
        return options.Lan
            ? [.. options.Names.Concat(HostNames.OwnAddresses()).DefaultIfEmpty("localhost").Select(host => $"https://{(host.Contains(':', StringComparison.Ordinal) ? $"[{host}]" : host)}:{port}/")]
            : [$"http://127.0.0.1:{port}/"];
    }
}
