using System.Globalization;

namespace ProcScript.Cli.Tests.Writing;

/// <summary>The jobs of the verbs that write, made once for all the tests of a class.</summary>
public sealed class WritingJobs : IDisposable
{
    private const string CountVariable = "PROCSCRIPT_INTERRUPTS";
    private const int FewTimes = 1;

    private readonly Dictionary<string, WritingJob> _jobs = [];

    /// <summary>How often each verb is to be stopped.</summary>
    public static int Times { get; } =
        Environment.GetEnvironmentVariable(CountVariable) is { Length: > 0 } typed ? int.Parse(typed, CultureInfo.InvariantCulture) : FewTimes;

    /// <summary>Whether there is so much to write that a stop can fall amid it.</summary>
    public static bool IsLarge => Times > FewTimes;

    /// <summary>The job of a verb, with every file as it is before.</summary>
    internal async Task<WritingJob> ForAsync(string verb)
    {
        if (!_jobs.TryGetValue(verb, out var job))
        {
            _jobs[verb] = job = await WritingJob.OfAsync(verb, IsLarge);
        }

        job.Reset();
        return job;
    }

    public void Dispose()
    {
        foreach (var job in _jobs.Values)
        {
            job.Dispose();
        }
    }
}
