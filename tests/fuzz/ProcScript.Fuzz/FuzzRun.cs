using System.Diagnostics;
using System.Globalization;
using ProcScript.Fuzz.Inputs;

namespace ProcScript.Fuzz;

/// <summary>Makes inputs and looks whether all that must hold holds.</summary>
internal sealed class FuzzRun
{
    /// <summary>How long an input may take with all that is looked at: far more than any needs, on any machine.</summary>
    private static readonly TimeSpan MostTime = TimeSpan.FromSeconds(10);

    /// <summary>After so much work it hangs.</summary>
    private static readonly TimeSpan MostWork = TimeSpan.FromSeconds(60);

    /// <summary>After so long it hangs though it does nothing.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(10);

    private static readonly TimeSpan Glance = TimeSpan.FromSeconds(1);

    /// <summary>How much one check may allocate.</summary>
    private const long MostBytesOfACheck = 1L << 30;

    /// <summary>How much an input may allocate with all that is looked at, which is a dozen checks and more.</summary>
    private const long MostBytes = 4L << 30;

    private const int MostKeptOfASort = 5;

    private readonly FuzzOptions _options;
    private readonly SeedLibraries _seeds = SeedLibraries.In(Checkout.Root);
    private readonly Dictionary<string, int> _broken = new(StringComparer.Ordinal);
    private readonly Dictionary<InputSort, SortTally> _tallies;

    private FuzzRun(FuzzOptions options)
    {
        _options = options;
        _tallies = options.Sorts.ToDictionary(sort => sort, _ => new SortTally());
    }

    /// <summary>Runs; 0 where everything holds, 1 where something is broken.</summary>
    public static int Run(FuzzOptions options) => new FuzzRun(options).Run();

    private int Run()
    {
        Directory.CreateDirectory(_options.Keep);
        var watch = Stopwatch.StartNew();
        var number = _options.From;
        for (; watch.Elapsed < _options.Time && number - _options.From < _options.Inputs; number++)
        {
            // Where the process itself ends, this says where to begin again.
            File.WriteAllText(Path.Combine(_options.Keep, "last"), string.Create(CultureInfo.InvariantCulture, $"--seed {_options.Seed} --from {number} --inputs 1\n"));
            var sort = _options.Sorts[(int)(number % _options.Sorts.Count)];
            Try(sort, number);
        }

        Tell(number - _options.From, watch.Elapsed);
        return _broken.Count == 0 ? 0 : 1;
    }

    private void Try(InputSort sort, long number)
    {
        var input = sort.Make(new Random(unchecked((int)((_options.Seed * 1_000_003) ^ (number * 2_654_435_761)))), _seeds);
        // The time of processors, not of the clock: another program on the machine makes no input slow.
        var (start, bytes) = (Environment.CpuUsage.TotalTime, GC.GetTotalAllocatedBytes());
        var broken = Look(input, number);
        var (time, allocated) = (Environment.CpuUsage.TotalTime - start, GC.GetTotalAllocatedBytes() - bytes);
        _tallies[sort].Add(time, allocated);
        broken ??= time > MostTime ? new Broken("takes no time", time.ToString())
            : allocated > MostBytes ? new Broken("takes little memory", Mebibytes(allocated))
            : null;
        if (broken is not null)
        {
            Keep(broken, input, sort, number);
        }
    }

    private static Broken? Look(FuzzInput input, long number)
    {
        using var source = new CancellationTokenSource();
        var look = Task.Run(() => Check(input, number, source.Token));
        try
        {
            var (start, watch) = (Environment.CpuUsage.TotalTime, Stopwatch.StartNew());
            while (Environment.CpuUsage.TotalTime - start < MostWork && watch.Elapsed < Patience)
            {
                if (look.Wait(Glance))
                {
                    return look.Result;
                }
            }

            source.Cancel();
            return new Broken("comes to an end", $"{Environment.CpuUsage.TotalTime - start} of work in {watch.Elapsed}");
        }
        catch (AggregateException failure)
        {
            var inner = failure.Flatten().InnerExceptions[0];
            return new Broken("ends without an exception", $"{inner.GetType().Name}: {inner.Message}\n{inner.StackTrace}");
        }
    }

    private static Broken? Check(FuzzInput input, long number, CancellationToken cancellation)
    {
        var bytes = GC.GetTotalAllocatedBytes();
        var check = CheckedInput.Of(input.Library, cancellation);
        if (GC.GetTotalAllocatedBytes() - bytes is var allocated and > MostBytesOfACheck)
        {
            return new Broken("a check takes little memory", Mebibytes(allocated));
        }

        return Invariants.All.Where(invariant => number / InputSort.All.Length % invariant.Every == 0)
            .Select(invariant => invariant.Find(input, check, cancellation))
            .FirstOrDefault(broken => broken is not null);
    }

    private static string Mebibytes(long bytes) => string.Create(CultureInfo.InvariantCulture, $"{bytes >> 20} MiB");

    private void Keep(Broken broken, FuzzInput input, InputSort sort, long number)
    {
        _broken[broken.What] = _broken.GetValueOrDefault(broken.What) + 1;
        if (_broken[broken.What] > MostKeptOfASort)
        {
            return;
        }

        var name = string.Create(CultureInfo.InvariantCulture, $"{broken.What.Replace(' ', '-')}-{sort.Name}-{_options.Seed}-{number}");
        foreach (var (path, text) in input.Library.Files)
        {
            var file = Path.Combine(_options.Keep, name, path);
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllText(file, text);
        }

        File.WriteAllText(Path.Combine(_options.Keep, name, "broken.txt"), $"{broken.What}\n{input.Library.Name}, {input.Changed}\n{broken.Detail}\n");
        Console.WriteLine($"broken: {broken.What} ({sort.Name}, {input.Library.Name}): {broken.Detail.Split('\n')[0]}");
    }

    private void Tell(long inputs, TimeSpan time)
    {
        foreach (var (sort, tally) in _tallies)
        {
            Console.WriteLine($"{sort.Name,-8} {tally}");
        }

        foreach (var (what, times) in _broken)
        {
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"broken {times} times: {what}"));
        }

        Console.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{inputs} inputs in {time.TotalSeconds:0} s, seed {_options.Seed}: {(_broken.Count == 0 ? "everything holds" : $"{_broken.Values.Sum()} broken, kept in {_options.Keep}")}"));
    }
}
