using System.Collections.Immutable;
using Npgsql;
using NpgsqlTypes;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Stores;

namespace ProcScript.Floor.Postgres;

/// <summary>
/// Job records in PostgreSQL, for a shop with several servers. A line is kept byte by byte as it would lie in a journal's file, hash and all: the record
/// can be taken out and read without the database. Whoever writes holds the job's row, so that lines follow each other.
/// </summary>
public sealed class PostgresJobStore : IJobStore
{
    private const string Tables =
        """
        create table if not exists floor_job (
            name text collate "C" primary key,
            lines integer not null);
        create table if not exists floor_line (
            job text collate "C" not null references floor_job,
            number integer not null,
            id text collate "C" not null,
            hash text not null,
            line bytea not null,
            primary key (job, number),
            unique (job, id));
        create table if not exists floor_file (
            job text collate "C" not null references floor_job,
            path text collate "C" not null,
            content bytea not null,
            primary key (job, path));
        """;

    /// <summary>The transaction that has written a row last: another one where a job was taken out and put in anew.</summary>
    private const string Changed = "xmin::text::bigint";

    /// <summary>The number of the lock under which tables are made: two servers that start at once would both make them.</summary>
    private const long TablesLock = 0x50726F63466C6F6F;

    private readonly NpgsqlDataSource _database;

    private PostgresJobStore(NpgsqlDataSource database) => _database = database;

    /// <summary>Opens the store, and makes its tables where there are none.</summary>
    /// <param name="database">The database.</param>
    /// <param name="stop">Ends the work.</param>
    /// <exception cref="JobStoreException">The database cannot be reached, or its user may not make tables.</exception>
    public static Task<PostgresJobStore> OpenAsync(NpgsqlDataSource database, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(database);
        return GuardedAsync("the database", async () =>
        {
            await using var connection = await database.OpenConnectionAsync(stop);
            await using var transaction = await connection.BeginTransactionAsync(stop);
            await using NpgsqlCommand command = new($"select pg_advisory_xact_lock({TablesLock}); {Tables}", connection, transaction);
            await command.ExecuteNonQueryAsync(stop);
            await transaction.CommitAsync(stop);
            return new PostgresJobStore(database);
        });
    }

    /// <inheritdoc/>
    public Task<ImmutableArray<string>> ListAsync(CancellationToken stop) => GuardedAsync("the jobs", async () =>
    {
        var names = ImmutableArray.CreateBuilder<string>();
        await using var command = _database.CreateCommand("select name from floor_job order by name");
        await using var rows = await command.ExecuteReaderAsync(stop);
        while (await rows.ReadAsync(stop))
        {
            names.Add(rows.GetString(0));
        }

        return names.ToImmutable();
    });

    /// <inheritdoc/>
    public Task<IReadOnlyDictionary<string, JournalStamp>> StampsAsync(CancellationToken stop) => GuardedAsync<IReadOnlyDictionary<string, JournalStamp>>("the jobs", async () =>
    {
        var stamps = new Dictionary<string, JournalStamp>(StringComparer.Ordinal);
        await using var command = _database.CreateCommand($"select name, lines, {Changed} from floor_job");
        await using var rows = await command.ExecuteReaderAsync(stop);
        while (await rows.ReadAsync(stop))
        {
            stamps[rows.GetString(0)] = new JournalStamp(rows.GetInt32(1), rows.GetInt64(2));
        }

        return stamps;
    });

    /// <inheritdoc/>
    public Task<JournalStamp> StampAsync(string job, CancellationToken stop) => GuardedAsync($"the job '{job}'", async () =>
    {
        await using var command = _database.CreateCommand($"select lines, {Changed} from floor_job where name = $1");
        command.Parameters.AddWithValue(Named(job));
        await using var rows = await command.ExecuteReaderAsync(stop);
        return await rows.ReadAsync(stop) ? new JournalStamp(rows.GetInt32(0), rows.GetInt64(1)) : throw NoJob(job);
    });

    /// <inheritdoc/>
    public Task<string> CreateAsync(string wanted, IReadOnlyDictionary<string, byte[]> files, JobEvent opened, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(files);
        Named(wanted);
        foreach (var path in files.Keys)
        {
            Placed(path);
        }

        return GuardedAsync($"the job '{wanted}'", async () =>
        {
            await using var connection = await _database.OpenConnectionAsync(stop);
            await using var transaction = await connection.BeginTransactionAsync(stop);
            var name = await TakeNameAsync(connection, transaction, wanted, stop);
            foreach (var (path, content) in files)
            {
                await PutAsync(connection, transaction, name, path, content, stop);
            }

            await WriteAsync(connection, transaction, name, JournalText.Write(opened, null), stop);
            await transaction.CommitAsync(stop);
            return name;
        });
    }

    /// <inheritdoc/>
    public Task<JournalReading> ReadAsync(string job, CancellationToken stop) => GuardedAsync($"the journal of '{job}'", async () =>
    {
        using MemoryStream lines = new();
        await using var command = _database.CreateCommand("select line from floor_line where job = $1 order by number");
        command.Parameters.AddWithValue(Named(job));
        await using var rows = await command.ExecuteReaderAsync(stop);
        while (await rows.ReadAsync(stop))
        {
            lines.Write(rows.GetFieldValue<byte[]>(0));
        }

        return lines.Length > 0 ? JournalText.Read(lines.GetBuffer().AsSpan(0, (int)lines.Length)) : throw NoJob(job);
    });

    /// <inheritdoc/>
    public Task<AppendedLine> AppendAsync(string job, JobEvent happened, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(happened);
        return GuardedAsync($"the journal of '{job}'", async () =>
        {
            await using var connection = await _database.OpenConnectionAsync(stop);
            await using var transaction = await connection.BeginTransactionAsync(stop);
            var lines = await HoldAsync(connection, transaction, Named(job), stop);
            if (await FindAsync(connection, transaction, job, happened.Id, stop) is { } there)
            {
                return new AppendedLine(there, WasThere: true);
            }

            var line = JournalText.Write(happened, Before(lines, await HashAsync(connection, transaction, job, lines, stop)));
            var changed = await WriteAsync(connection, transaction, job, line, stop);
            await transaction.CommitAsync(stop);
            return new AppendedLine(line, WasThere: false) { Stamp = new JournalStamp(line.Event.Number, changed) };
        });
    }

    /// <inheritdoc/>
    public Task<ImmutableArray<string>> ListFilesAsync(string job, string folder, CancellationToken stop) => GuardedAsync($"the files of '{job}'", async () =>
    {
        var paths = ImmutableArray.CreateBuilder<string>();
        await using var command = _database.CreateCommand("select path from floor_file where job = $1 and starts_with(path, $2) order by path");
        command.Parameters.AddWithValue(Named(job));
        command.Parameters.AddWithValue($"{Placed(folder)}/");
        await using var rows = await command.ExecuteReaderAsync(stop);
        while (await rows.ReadAsync(stop))
        {
            paths.Add(rows.GetString(0));
        }

        return paths.ToImmutable();
    });

    /// <inheritdoc/>
    public Task<byte[]?> ReadFileAsync(string job, string path, CancellationToken stop) => GuardedAsync($"the file '{path}' of '{job}'", async () =>
    {
        await using var command = _database.CreateCommand("select content from floor_file where job = $1 and path = $2");
        command.Parameters.AddWithValue(Named(job));
        command.Parameters.AddWithValue(Placed(path));
        return await command.ExecuteScalarAsync(stop) as byte[];
    });

    /// <inheritdoc/>
    public Task AddFilesAsync(string job, IReadOnlyDictionary<string, byte[]> files, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(files);
        return GuardedAsync($"the files of '{job}'", async () =>
        {
            await using var connection = await _database.OpenConnectionAsync(stop);
            await using var transaction = await connection.BeginTransactionAsync(stop);
            await HoldAsync(connection, transaction, Named(job), stop);
            foreach (var (path, content) in files)
            {
                if (!await PutAsync(connection, transaction, job, Placed(path), content, stop))
                {
                    throw new JobStoreException($"'{path}' of '{job}' is there already, and is another file.");
                }
            }

            await transaction.CommitAsync(stop);
            return true;
        });
    }

    private static async Task<string> TakeNameAsync(NpgsqlConnection connection, NpgsqlTransaction transaction, string wanted, CancellationToken stop)
    {
        for (var number = 1; ; number++)
        {
            var name = number == 1 ? wanted : $"{wanted}-{number}";
            await using NpgsqlCommand command = new("insert into floor_job (name, lines) values ($1, 0) on conflict do nothing", connection, transaction);
            command.Parameters.AddWithValue(name);
            if (await command.ExecuteNonQueryAsync(stop) == 1)
            {
                return name;
            }
        }
    }

    /// <summary>Holds a job until the transaction ends, and says how many lines its journal has.</summary>
    private static async Task<int> HoldAsync(NpgsqlConnection connection, NpgsqlTransaction transaction, string job, CancellationToken stop)
    {
        await using NpgsqlCommand command = new("select lines from floor_job where name = $1 for update", connection, transaction);
        command.Parameters.AddWithValue(job);
        return await command.ExecuteScalarAsync(stop) as int? ?? throw NoJob(job);
    }

    private static async Task<string> HashAsync(NpgsqlConnection connection, NpgsqlTransaction transaction, string job, int number, CancellationToken stop)
    {
        await using NpgsqlCommand command = new("select hash from floor_line where job = $1 and number = $2", connection, transaction);
        command.Parameters.AddWithValue(job);
        command.Parameters.AddWithValue(number);
        return await command.ExecuteScalarAsync(stop) as string ?? throw new JobStoreException($"line {number} of the journal of '{job}' is gone. Nothing can be added to it.");
    }

    private static async Task<JournalLine?> FindAsync(NpgsqlConnection connection, NpgsqlTransaction transaction, string job, string id, CancellationToken stop)
    {
        await using NpgsqlCommand command = new(
            "select here.number, here.line, coalesce(before.hash, '') from floor_line here left join floor_line before on before.job = here.job and before.number = here.number - 1 where here.job = $1 and here.id = $2",
            connection,
            transaction);
        command.Parameters.AddWithValue(job);
        command.Parameters.AddWithValue(id);
        await using var rows = await command.ExecuteReaderAsync(stop);
        if (!await rows.ReadAsync(stop))
        {
            return null;
        }

        var (number, line, hash) = (rows.GetInt32(0), rows.GetFieldValue<byte[]>(1), rows.GetString(2));
        var reading = JournalText.ReadOn(line, number == 1 ? null : Before(number - 1, hash));
        return reading.Lines is [var there] ? there : throw new JobStoreException($"line {number} of the journal of '{job}' is damaged: {reading.Fault?.Problem}.");
    }

    /// <summary>A line as far as the one after it needs it.</summary>
    private static JournalLine Before(int number, string hash) =>
        new(new JobEvent { Id = "", Kind = EventKind.Note, At = default, By = "", Number = number }, hash, ReadOnlyMemory<byte>.Empty);

    /// <summary>Writes a line, and says in which transaction.</summary>
    private static async Task<long> WriteAsync(NpgsqlConnection connection, NpgsqlTransaction transaction, string job, JournalLine line, CancellationToken stop)
    {
        // A transaction is acknowledged once it is on the disk, whatever the database does otherwise.
        await using NpgsqlCommand command = new(
            $"with written as (insert into floor_line (job, number, id, hash, line) values ($1, $2, $3, $4, $5)) update floor_job set lines = $2 where name = $1 returning {Changed}", connection, transaction);
        command.Parameters.AddWithValue(job);
        command.Parameters.AddWithValue(line.Event.Number);
        command.Parameters.AddWithValue(line.Event.Id);
        command.Parameters.AddWithValue(line.Hash);
        command.Parameters.AddWithValue(NpgsqlDbType.Bytea, line.Bytes.ToArray());
        await using NpgsqlCommand safe = new("set local synchronous_commit = on", connection, transaction);
        await safe.ExecuteNonQueryAsync(stop);
        return (long)(await command.ExecuteScalarAsync(stop))!;
    }

    /// <summary>Puts a file down; false where another has its path.</summary>
    private static async Task<bool> PutAsync(NpgsqlConnection connection, NpgsqlTransaction transaction, string job, string path, byte[] content, CancellationToken stop)
    {
        await using NpgsqlCommand put = new("insert into floor_file (job, path, content) values ($1, $2, $3) on conflict do nothing", connection, transaction);
        put.Parameters.AddWithValue(job);
        put.Parameters.AddWithValue(path);
        put.Parameters.AddWithValue(NpgsqlDbType.Bytea, content);
        if (await put.ExecuteNonQueryAsync(stop) == 1)
        {
            return true;
        }

        await using NpgsqlCommand compare = new("select content = $3 from floor_file where job = $1 and path = $2", connection, transaction);
        compare.Parameters.AddWithValue(job);
        compare.Parameters.AddWithValue(path);
        compare.Parameters.AddWithValue(NpgsqlDbType.Bytea, content);
        return await compare.ExecuteScalarAsync(stop) is true;
    }

    private static string Named(string job) => JobNames.IsName(job) ? job : throw new JobStoreException($"'{job}' is no name of a job: letters, digits, '_', '-' and '.' are.");

    private static string Placed(string path) => JobNames.IsPath(path) ? path : throw new JobStoreException($"'{path}' is no path of a file of a job.");

    private static JobStoreException NoJob(string job) => new($"there is no job '{job}' in the database.");

    private static async Task<T> GuardedAsync<T>(string what, Func<Task<T>> work)
    {
        try
        {
            return await work();
        }
        catch (Exception failure) when (failure is NpgsqlException or ArgumentException or TimeoutException or System.Net.Sockets.SocketException)
        {
            throw new JobStoreException($"{what}: {failure.Message}", failure);
        }
    }
}
