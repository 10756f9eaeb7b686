using System.Collections.Immutable;
using Npgsql;
using ProcScript.Floor.Index;

namespace ProcScript.Floor;

/// <summary>What the server was started with.</summary>
public sealed record FloorOptions
{
    /// <summary>The port where none is named: one that no service is registered for.</summary>
    public const int UsualPort = 5290;

    /// <summary>The folder of the jobs, as a full path; the server keeps its own things below it in any case.</summary>
    public required string Folder { get; init; }

    /// <summary>The port; 0 for any that is free.</summary>
    public int Port { get; init; } = UsualPort;

    /// <summary>Whether it serves the network, and not this machine alone.</summary>
    public bool Lan { get; init; }

    /// <summary>Whether a browser has to be paired by a code first.</summary>
    public bool Pairing { get; init; } = true;

    /// <summary>Names by which browsers reach it, beside this machine's own.</summary>
    public ImmutableArray<string> Names { get; init; } = [];

    /// <summary>The file of the certificate, in PEM; null for one of its own.</summary>
    public string? Certificate { get; init; }

    /// <summary>The file of its key, in PEM.</summary>
    public string? Key { get; init; }

    /// <summary>Whether the jobs are kept in PostgreSQL, and not in the folder.</summary>
    public bool Postgres { get; init; }

    /// <summary>How the database is reached.</summary>
    public string? Connection { get; init; }

    /// <summary>Whether the jobs of the folder are put into the database first.</summary>
    public bool BringIn { get; init; }

    /// <summary>The folder of this machine that the index of the board lies in, as a full path; null where none is kept.</summary>
    public string? IndexFolder { get; init; }

    /// <summary>The file of the index, as a full path; null where none is kept.</summary>
    public string? IndexFile => IndexFolder is { } folder ? IndexPlace.File(folder, Jobs) : null;

    /// <summary>Whether the index is made anew.</summary>
    public bool RebuildIndex { get; init; }

    /// <summary>Whose jobs are served: what the index is told from others by.</summary>
    public string Jobs
    {
        get
        {
            if (!Postgres)
            {
                return Path.TrimEndingDirectorySeparator(Folder);
            }

            NpgsqlConnectionStringBuilder server = new(Connection);
            return $"postgres {server.Host}:{server.Port}/{server.Database}";
        }
    }

    /// <summary>The folder of what the server keeps for itself.</summary>
    public string OwnFolder => Path.Combine(Folder, ".floor");

    /// <summary>What is wrong with it; null where nothing is.</summary>
    public string? Fault() =>
        Port is < 0 or > ushort.MaxValue ? $"--port {Port}: a port is a number from 1 to {ushort.MaxValue}; 0 is any that is free."
        : Lan && !Pairing ? "--no-pairing with --lan would let in the whole network. Leave one of them out."
        : (Certificate is null) != (Key is null) ? "--certificate and --key belong together: name both files."
        : Certificate is not null && !Lan ? "--certificate is for --lan: this machine alone is served without TLS."
        : Postgres && string.IsNullOrWhiteSpace(Connection) ? "--store postgres needs --connection, such as \"Host=localhost;Database=jobs;Username=floor\"."
        : !Postgres && Connection is not null ? "--connection is for --store postgres."
        : !Postgres && BringIn ? "--bring-in is for --store postgres: the jobs of the folder are served from there already."
        : IndexFolder is not null && $"{IndexFolder}{Path.DirectorySeparatorChar}".StartsWith($"{Path.TrimEndingDirectorySeparator(Folder)}{Path.DirectorySeparatorChar}", StringComparison.Ordinal)
            ? $"--index {IndexFolder}: that is within the folder of the jobs, which other servers may share. Name a folder of this machine."
        : RebuildIndex && IndexFolder is null ? "--rebuild-index needs an index: leave out --index none."
        : null;
}
