using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using Npgsql;

[assembly: AssemblyFixture(typeof(ProcScript.Floor.Tests.Stores.PostgresFixture))]

namespace ProcScript.Floor.Tests.Stores;

/// <summary>A real PostgreSQL in a folder of its own, as Debian's package brings it: that of the path, or of its usual place.</summary>
public sealed class PostgresFixture : IAsyncLifetime
{
    private const string Usual = "/usr/lib/postgresql";
    private const string ServerUser = "postgres";

    private readonly string _folder = Directory.CreateTempSubdirectory("floor-pg-").FullName;
    private string? _programs;
    private int _port;

    /// <summary>A database of its own, or the test is skipped where there is no PostgreSQL.</summary>
    public async Task<NpgsqlDataSource> NewDatabaseAsync()
    {
        Assert.SkipWhen(_programs is null, $"No PostgreSQL: install Debian's package postgresql, or put initdb and pg_ctl on the path (looked in {Usual} too).");
        var name = $"floor_{Guid.NewGuid():N}";
        await using var server = NpgsqlDataSource.Create(Connection("postgres"));
        await using var command = server.CreateCommand($"create database {name}");
        await command.ExecuteNonQueryAsync();
        return NpgsqlDataSource.Create(Connection(name));
    }

    public async ValueTask InitializeAsync()
    {
        _programs = Find();
        if (_programs is null)
        {
            return;
        }

        _port = FreePort();
        if (IsRoot)
        {
            // The server refuses to run as root.
            await RunAsync("chown", ServerUser, _folder);
        }

        var data = Path.Combine(_folder, "data");
        await RunAsServerAsync(Path.Combine(_programs, "initdb"), "-D", data, "-U", ServerUser, "-A", "trust", "-E", "UTF8", "--locale=C");
        await RunAsServerAsync(
            Path.Combine(_programs, "pg_ctl"), "-D", data, "-w", "-l", Path.Combine(_folder, "log"), "-o", $"-p {_port} -c listen_addresses=127.0.0.1 -c unix_socket_directories='{_folder}' -c fsync=on -c max_connections=60", "start");
    }

    public async ValueTask DisposeAsync()
    {
        if (_port > 0)
        {
            NpgsqlConnection.ClearAllPools();
            await RunAsServerAsync(Path.Combine(_programs!, "pg_ctl"), "-D", Path.Combine(_folder, "data"), "-m", "immediate", "stop");
        }

        Directory.Delete(_folder, recursive: true);
    }

    private static bool IsRoot => OperatingSystem.IsLinux() && Environment.UserName == "root";

    private string Connection(string database) => $"Host=127.0.0.1;Port={_port};Username={ServerUser};Database={database};Maximum Pool Size=20";

    private static string? Find() =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
            .Concat(Directory.Exists(Usual) ? Directory.EnumerateDirectories(Usual).OrderDescending(StringComparer.Ordinal).Select(version => Path.Combine(version, "bin")) : [])
            .FirstOrDefault(folder => folder.Length > 0 && File.Exists(Path.Combine(folder, "initdb")) && File.Exists(Path.Combine(folder, "pg_ctl")));

    private static int FreePort()
    {
        using TcpListener listener = new(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    private static Task RunAsServerAsync(params string[] command) => IsRoot ? RunAsync(["runuser", "-u", ServerUser, "--", .. command]) : RunAsync(command);

    private static async Task RunAsync(params string[] command)
    {
        ProcessStartInfo start = new(command[0], command[1..]) { WorkingDirectory = Path.GetTempPath(), UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardInput = true };
        start.Environment["LC_ALL"] = "C";
        using var process = Process.Start(start)!;
        process.StandardInput.Close();
        // The server that is started holds on to the output: it is read as it comes, and its end is not waited for.
        process.OutputDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        while (!process.HasExited)
        {
            await Task.Delay(20);
        }

        Assert.True(process.ExitCode == 0, string.Create(CultureInfo.InvariantCulture, $"{string.Join(' ', command)} ended with {process.ExitCode}."));
    }
}
