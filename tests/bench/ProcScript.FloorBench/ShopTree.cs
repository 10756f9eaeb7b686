using System.Collections.Immutable;
using System.Globalization;
using ProcScript.Jobs.Files;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Stores;

namespace ProcScript.FloorBench;

/// <summary>A shop's folder of jobs after years: most are closed, some stand, some journals are damaged or were cut off. The same every time.</summary>
internal static class ShopTree
{
    private const int LeastEvents = 50;
    private const int MostEvents = 1_000;
    private const int Customers = 20;
    private const int FirstYear = 2016;
    private const int Years = 10;
    private const int WithLibrary = 25;
    private const double Closed = 0.85;
    private const double Damaged = 0.01;
    private const double Torn = 0.01;

    /// <summary>Makes it.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="jobs">How many jobs.</param>
    /// <param name="nested">Whether they lie in a folder for each year and customer.</param>
    /// <returns>How many bytes the journals have.</returns>
    public static long Make(string folder, int jobs, bool nested)
    {
        var random = new Random(1);
        var bytes = 0L;
        for (var i = 0; i < jobs; i++)
        {
            var shelf = nested ? Path.Combine(folder, (FirstYear + (i * Years / jobs)).ToString(CultureInfo.InvariantCulture), $"customer {random.Next(Customers)}") : folder;
            var place = Path.Combine(shelf, NameOf(i));
            Directory.CreateDirectory(place);
            var journal = Journal(i, random);
            bytes += journal.Length;
            File.WriteAllBytes(Path.Combine(place, JournalFile.Name), journal);
            foreach (var (path, content) in i % WithLibrary == 0 ? BenchJobs.Library : ImmutableDictionary<string, byte[]>.Empty)
            {
                var file = Path.Combine(place, LoadedJob.LibraryFolder, path);
                Directory.CreateDirectory(Path.GetDirectoryName(file)!);
                File.WriteAllBytes(file, content);
            }
        }

        return bytes;
    }

    /// <summary>The name of a job; every so many have all that is needed to open them on a tablet, the first among them.</summary>
    /// <param name="number">Which job.</param>
    public static string NameOf(int number) => $"{10_000 + number}-B-{number}-bench";

    private static byte[] Journal(int number, Random random)
    {
        var events = (int)(LeastEvents * Math.Pow((double)MostEvents / LeastEvents, random.NextDouble()));
        var from = new DateTimeOffset(FirstYear, 1, 1, 8, 0, 0, TimeSpan.Zero).AddHours(number);
        using MemoryStream journal = new();
        var line = JournalText.Write(BenchJobs.Opened(from, $"B-{number}"), null);
        journal.Write(line.Bytes.Span);
        var isClosed = number % WithLibrary != 0 && random.NextDouble() < Closed;
        for (var i = 2; i <= events; i++)
        {
            var kind = isClosed && i == events ? EventKind.Closed : random.Next(20) switch { < 8 => EventKind.Done, 8 => EventKind.Undone, 9 => EventKind.Pause, 10 => EventKind.Resume, 11 => EventKind.Broke, _ => EventKind.Note };
            line = JournalText.Write(
                new JobEvent
                {
                    Id = $"{number}-{i}-{random.NextInt64():x16}",
                    Kind = kind,
                    At = from.AddMinutes(i),
                    Logged = from.AddMinutes(i),
                    By = $"Person {random.Next(12)}",
                    Plan = BenchJobs.Revision,
                    Step = kind is EventKind.Done or EventKind.Undone ? 1 + random.Next(BenchJobs.Steps) : null,
                    Text = "What there is to say about it, in as many words as people use on a tablet.",
                },
                line);
            journal.Write(line.Bytes.Span);
        }

        var bytes = journal.ToArray();
        var fate = number % WithLibrary == 0 ? 1 : random.NextDouble();
        if (fate < Damaged)
        {
            bytes[bytes.Length / 2] ^= 1;
        }

        return fate is >= Damaged and < Damaged + Torn ? bytes[..^40] : bytes;
    }
}
