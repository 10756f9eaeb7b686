using System.Net.Sockets;
using System.Security.Cryptography;
using Npgsql;
using ProcScript.Floor.Doors;
using ProcScript.Floor.Postgres;
using ProcScript.Jobs.Files;
using ProcScript.Jobs.Stores;

namespace ProcScript.Floor;

/// <summary>The program: it says where it listens, and serves until it is stopped.</summary>
internal static class FloorProgram
{
    private const int Good = 0;
    private const int Wrong = 2;

    /// <summary>Runs it.</summary>
    /// <param name="options">What it was started with.</param>
    /// <param name="told">Where it says what it does.</param>
    /// <param name="faults">Where it says what is in the way, and what it has refused.</param>
    /// <param name="stop">Ends it.</param>
    public static async Task<int> RunAsync(FloorOptions options, TextWriter told, TextWriter faults, CancellationToken stop)
    {
        try
        {
            if (options.Fault() is { } fault)
            {
                throw new ArgumentException(fault);
            }

            Directory.CreateDirectory(options.Folder);
            await using var database = options.Postgres ? NpgsqlDataSource.Create(options.Connection!) : null;
            var files = new FileJobStore(options.Folder);
            IJobStore store = database is null ? files : await PostgresJobStore.OpenAsync(database, stop);
            if (options.BringIn)
            {
                await BroughtIn.FromAsync(files, store, told, stop);
            }

            await using var server = await FloorServer.StartAsync(options, store, faults, stop);
            await SayAsync(options, server, told);
            await server.Stopped(stop);
            return Good;
        }
        catch (Exception failure) when (failure is ArgumentException or JobStoreException or IOException or UnauthorizedAccessException or SocketException or CryptographicException or NpgsqlException)
        {
            await faults.WriteLineAsync($"procscript-floor: {failure.Message}");
            return Wrong;
        }
    }

    private static async Task SayAsync(FloorOptions options, FloorServer server, TextWriter told)
    {
        foreach (var address in server.Addresses)
        {
            await told.WriteLineAsync($"The board: {address}");
        }

        if (options.IndexFile is { } index)
        {
            await told.WriteLineAsync($"The index of the board, which can be deleted: {index}");
        }

        if (server.Certificate is { } certificate)
        {
            await told.WriteLineAsync($"The certificate's SHA-256 fingerprint: {OwnCertificate.Fingerprint(certificate)}");
        }

        if (!options.Pairing)
        {
            await told.WriteLineAsync("Nobody is asked for a code: whoever can log in to this machine can write into its jobs.");
            return;
        }

        server.Pairing.CodeChanged += code => told.WriteLine($"The next code to pair a tablet with: {PairingDesk.Spaced(code)}");
        await told.WriteLineAsync($"To pair a tablet, enter the code {PairingDesk.Spaced(server.Pairing.Code)} in its browser. It works once.");
        if (!options.Lan)
        {
            await told.WriteLineAsync($"On this machine: {server.Addresses[0]}pair#{server.Pairing.Code}");
        }
    }
}
