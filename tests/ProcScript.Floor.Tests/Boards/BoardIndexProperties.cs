using CsCheck;
using ProcScript.Jobs.Files;

namespace ProcScript.Floor.Tests.Boards;

/// <summary>Whatever happens to the jobs and to the index, the board says what the journals say.</summary>
public sealed class BoardIndexProperties
{
    [Fact]
    public async Task After_whatever_happened_the_board_is_that_of_the_journals()
    {
        await Gen.Select(Gen.Int[0, 13], Gen.Int[0, 9_999]).Array[1, 40].SampleAsync(
            async happenings =>
            {
                using BoardShop shop = new();
                await shop.OpenAsync();
                foreach (var (what, which) in happenings)
                {
                    await HappenAsync(shop, what, which);
                }

                await shop.AssertIsRightAsync();
                shop.Board.Keep();
                shop.Start();
                await shop.AssertIsRightAsync();
            },
            iter: Depth.Of(160));
    }

    private static async Task HappenAsync(BoardShop shop, int what, int which)
    {
        var jobs = Directory.EnumerateDirectories(shop.Root, "job-*", SearchOption.AllDirectories).Order(StringComparer.Ordinal).ToList();
        var job = jobs.Count == 0 ? null : jobs[which % jobs.Count];
        var isOne = job is not null && jobs.Count(other => Path.GetFileName(other) == Path.GetFileName(job)) == 1;
        switch (what)
        {
            case 0 or 1:
                await shop.OpenAsync(which % 2 == 0 ? "" : "2025/customer");
                break;
            case 2 or 3 when isOne && IsWhole(job!):
                await shop.WriteAsync(Path.GetFileName(job!));
                break;
            case 4 or 5 when job is not null && IsWhole(job):
                await shop.TellAsync(job);
                break;
            case 6 when job is not null:
                Directory.Delete(job, recursive: true);
                break;
            case 7 when job is not null:
                Move(job, Path.Combine(Path.GetDirectoryName(job)!, $"job-{which}"));
                break;
            case 8 when job is not null:
                Move(job, Path.Combine(shop.Root, $"shelf {which % 3}", Path.GetFileName(job)));
                break;
            case 9 when job is not null:
                Copy(job, Path.Combine(shop.Root, "copies", Path.GetFileName(job)));
                break;
            case 10 when job is not null:
                Damage(Path.Combine(job, JournalFile.Name), which);
                break;
            case 11:
                shop.Board.Keep();
                Spoil(shop.IndexFile, which);
                break;
            case 12:
                shop.Board.Keep();
                shop.Start();
                break;
            default:
                await shop.Board.LookAsync(TestContext.Current.CancellationToken);
                shop.Board.Keep();
                break;
        }
    }

    /// <summary>Nothing can be written into a journal that is damaged: that is held to elsewhere.</summary>
    private static bool IsWhole(string job) => new JournalFile(job).Read().Fault is null && File.ReadAllBytes(Path.Combine(job, JournalFile.Name)) is [.., (byte)'\n'];

    private static void Move(string from, string to)
    {
        if (!Directory.Exists(to))
        {
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            Directory.Move(from, to);
        }
    }

    private static void Copy(string from, string to)
    {
        if (!Directory.Exists(to))
        {
            Directory.CreateDirectory(to);
            File.Copy(Path.Combine(from, JournalFile.Name), Path.Combine(to, JournalFile.Name));
        }
    }

    /// <summary>A journal is cut off, or a letter of it is another.</summary>
    private static void Damage(string journal, int which)
    {
        var (bytes, before) = (File.ReadAllBytes(journal), File.GetLastWriteTimeUtc(journal));
        if (which % 2 == 0)
        {
            bytes = bytes[..^(1 + (which % (bytes.Length / 2)))];
        }
        else
        {
            bytes[which % bytes.Length] ^= 1;
        }

        File.WriteAllBytes(journal, bytes);
        // The clock of a file system may not have gone on since.
        File.SetLastWriteTimeUtc(journal, before.AddSeconds(1));
    }

    /// <summary>The index is gone, cut off, something else, or has bits that turned.</summary>
    private static void Spoil(string index, int which)
    {
        if (!File.Exists(index))
        {
            return;
        }

        var bytes = File.ReadAllBytes(index);
        switch (which % 4)
        {
            case 0:
                File.Delete(index);
                break;
            case 1:
                File.WriteAllBytes(index, bytes[..(which % bytes.Length)]);
                break;
            case 2:
                new Random(which).NextBytes(bytes);
                File.WriteAllBytes(index, bytes);
                break;
            default:
                var random = new Random(which);
                for (var i = 0; i < 20; i++)
                {
                    bytes[random.Next(bytes.Length)] ^= (byte)(1 << random.Next(8));
                }

                File.WriteAllBytes(index, bytes);
                break;
        }
    }
}
