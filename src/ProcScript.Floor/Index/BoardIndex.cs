using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Microsoft.Data.Sqlite;
using ProcScript.Floor.Desk;
using ProcScript.Jobs.Standing;
using ProcScript.Jobs.Stores;

namespace ProcScript.Floor.Index;

/// <summary>
/// The lines of the board, kept in a database file of this machine from one start to the next, each with the stamp of the journal that it is from. It holds
/// nothing that the journals do not say: a line whose journal is not as it was, or that is not as it was written itself, counts for nothing, and a file that
/// cannot be read is made anew.
/// </summary>
/// <param name="path">The file, as a full path.</param>
/// <param name="jobs">Whose jobs they are: a folder, or a database.</param>
/// <param name="faults">Where it is said that it was made anew, or cannot be kept.</param>
public sealed class BoardIndex(string path, string jobs, TextWriter faults)
{
    private const int Patience = 5;
    private const int DigestLength = 16;

    private const string Tables =
        """
        create table if not exists about (name text primary key, value text not null) without rowid;
        create table if not exists line (job text primary key, extent integer not null, changed integer not null, line text, fault text, digest blob not null) without rowid;
        """;

    /// <summary>By what lines are told from those of a program that counts otherwise: what it is built from.</summary>
    private static readonly string Form = $"{typeof(JobLine).Module.ModuleVersionId} {typeof(KnownLine).Module.ModuleVersionId}";

    private readonly string _connection = new SqliteConnectionStringBuilder { DataSource = path, Pooling = false, DefaultTimeout = Patience }.ToString();
    private Dictionary<string, KnownLine> _written = new(StringComparer.Ordinal);
    private string _said = "";

    /// <summary>The file, as a full path.</summary>
    public string Path => path;

    /// <summary>Reads what it holds; nothing where it holds nothing that can be used.</summary>
    public IReadOnlyDictionary<string, KnownLine> Read()
    {
        _written = new Dictionary<string, KnownLine>(StringComparer.Ordinal);
        if (!File.Exists(path))
        {
            return _written;
        }

        try
        {
            using var connection = Open();
            if (IsEmpty(connection))
            {
                // Another server of this machine is about to write it.
                return _written;
            }

            if (About(connection, "form") != Form || About(connection, "jobs") != jobs)
            {
                throw new InvalidDataException("it is of another version of the program, or of other jobs.");
            }

            ReadLines(connection);
        }
        catch (Exception failure) when (IsTrouble(failure))
        {
            MakeAnew(failure);
        }

        return _written;
    }

    /// <summary>Writes what has changed since it was read or written last. What cannot be written is said once: the board does without.</summary>
    /// <param name="lines">All lines, by their jobs.</param>
    public void Write(IReadOnlyDictionary<string, KnownLine> lines)
    {
        ArgumentNullException.ThrowIfNull(lines);
        if (!File.Exists(path))
        {
            _written.Clear();
        }

        // A journal that could not be read at all has no stamp by which it would be known again.
        var now = lines.Where(line => line.Value.Stamp != default).ToDictionary(StringComparer.Ordinal);
        var changed = now.Where(line => !ReferenceEquals(_written.GetValueOrDefault(line.Key), line.Value)).ToList();
        var gone = _written.Keys.Where(job => !now.ContainsKey(job)).ToList();
        if (changed.Count + gone.Count == 0)
        {
            return;
        }

        try
        {
            Directory.CreateDirectory(System.IO.Path.GetDirectoryName(path)!);
            using var connection = Open();
            WriteLines(connection, changed, gone);
            (_written, _said) = (now, "");
        }
        catch (Exception failure) when (IsTrouble(failure))
        {
            if (failure is SqliteException { SqliteErrorCode: SQLitePCL.raw.SQLITE_CORRUPT or SQLitePCL.raw.SQLITE_NOTADB or SQLitePCL.raw.SQLITE_ERROR })
            {
                MakeAnew(failure);
            }
            else
            {
                Say($"the index '{path}' cannot be written: {failure.Message} Nothing is lost; the next start takes longer.");
            }
        }
    }

    /// <summary>Takes the file away: the next that is written is whole.</summary>
    public void Delete()
    {
        _written.Clear();
        foreach (var file in (string[])[path, $"{path}-journal"])
        {
            File.Delete(file);
        }
    }

    private static bool IsTrouble(Exception failure) =>
        failure is SqliteException or IOException or UnauthorizedAccessException or InvalidDataException or InvalidOperationException or InvalidCastException or FormatException or OverflowException or ArgumentException or JsonException;

    private void MakeAnew(Exception why)
    {
        Say($"the index '{path}' is made anew from the journals: {why.Message}");
        try
        {
            Delete();
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            Say($"the index '{path}' cannot be used and cannot be taken away: {failure.Message} Nothing is lost; the next start takes longer.");
        }
    }

    private void Say(string text)
    {
        if (text != _said)
        {
            faults.WriteLine($"procscript-floor: {_said = text}");
        }
    }

    private SqliteConnection Open()
    {
        SqliteConnection connection = new(_connection);
        try
        {
            connection.Open();
            // What a power cut leaves half written shows by its digest, or as a file that is none: there is no need to wait for the disk.
            Do(connection, "pragma synchronous = off; pragma cell_size_check = on; pragma trusted_schema = off;");
            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    private static void Do(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    private static bool IsEmpty(SqliteConnection connection)
    {
        using var command = connection.CreateCommand();
        command.CommandText = "select count(*) from sqlite_master";
        return command.ExecuteScalar() is 0L;
    }

    private static string? About(SqliteConnection connection, string name)
    {
        using var command = connection.CreateCommand();
        command.CommandText = "select value from about where name = $name";
        command.Parameters.AddWithValue("$name", name);
        return command.ExecuteScalar() as string;
    }

    private void ReadLines(SqliteConnection connection)
    {
        using var command = connection.CreateCommand();
        command.CommandText = "select job, extent, changed, line, fault, digest from line";
        using var rows = command.ExecuteReader();
        while (rows.Read())
        {
            var (job, stamp) = (rows.GetString(0), new JournalStamp(rows.GetInt64(1), rows.GetInt64(2)));
            var (line, fault) = (rows.IsDBNull(3) ? null : rows.GetString(3), rows.IsDBNull(4) ? null : rows.GetString(4));
            if (Digest(job, stamp, line, fault).AsSpan().SequenceEqual(rows.GetFieldValue<byte[]>(5)))
            {
                _written[job] = new KnownLine(stamp, line is null ? null : JsonSerializer.Deserialize(line, IndexJson.Default.JobLine), fault);
            }
        }
    }

    private void WriteLines(SqliteConnection connection, List<KeyValuePair<string, KnownLine>> changed, List<string> gone)
    {
        using var transaction = connection.BeginTransaction();
        Do(connection, Tables);
        using var put = connection.CreateCommand();
        put.CommandText = "insert or replace into about values ('form', $form), ('jobs', $jobs)";
        put.Parameters.AddWithValue("$form", Form);
        put.Parameters.AddWithValue("$jobs", jobs);
        put.ExecuteNonQuery();
        using var insert = connection.CreateCommand();
        insert.CommandText = "insert or replace into line (job, extent, changed, line, fault, digest) values ($job, $extent, $changed, $line, $fault, $digest)";
        foreach (var (job, known) in changed)
        {
            var line = known.Line is null ? null : JsonSerializer.Serialize(known.Line, IndexJson.Default.JobLine);
            insert.Parameters.Clear();
            insert.Parameters.AddWithValue("$job", job);
            insert.Parameters.AddWithValue("$extent", known.Stamp.Extent);
            insert.Parameters.AddWithValue("$changed", known.Stamp.Changed);
            insert.Parameters.AddWithValue("$line", (object?)line ?? DBNull.Value);
            insert.Parameters.AddWithValue("$fault", (object?)known.Fault ?? DBNull.Value);
            insert.Parameters.AddWithValue("$digest", Digest(job, known.Stamp, line, known.Fault));
            insert.ExecuteNonQuery();
        }

        using var delete = connection.CreateCommand();
        delete.CommandText = "delete from line where job = $job";
        foreach (var job in gone)
        {
            delete.Parameters.Clear();
            delete.Parameters.AddWithValue("$job", job);
            delete.ExecuteNonQuery();
        }

        transaction.Commit();
    }

    /// <summary>A database file has no check of its own for a bit that turned: each line has.</summary>
    private static byte[] Digest(string job, JournalStamp stamp, string? line, string? fault) =>
        SHA256.HashData(Encoding.UTF8.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{job}\0{stamp.Extent}\0{stamp.Changed}\0{line}\0{fault}")))[..DigestLength];
}
