using System.Security.Cryptography;
using System.Text;
using ProcScript.Analysis.Following;
using ProcScript.Cards;
using ProcScript.Floor.Doors;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Replays;
using ProcScript.Jobs.Stores;

namespace ProcScript.Floor.Desk;

/// <summary>Cards for a job that has left its own: the way back from how the machine stands, proven.</summary>
internal static class NewCards
{
    /// <summary>Makes them and keeps them beside the earlier ones.</summary>
    /// <param name="store">Where the job is kept.</param>
    /// <param name="job">Its name there.</param>
    /// <param name="replay">The job.</param>
    /// <param name="by">Who asks for them.</param>
    /// <param name="time">The server's clock.</param>
    /// <param name="stop">Ends the work.</param>
    /// <returns>The event by which the job goes on by them.</returns>
    /// <exception cref="RefusedException">There is no such way, or none is needed.</exception>
    public static async Task<JobEvent> MakeAsync(IJobStore store, string job, JobReplay replay, string by, DateTimeOffset time, CancellationToken stop)
    {
        if (replay.Closed is not null || !replay.IsOffCourse)
        {
            throw new RefusedException(StatusCodes.Status409Conflict, "The job has not left its cards: go on by them.");
        }

        var course = replay.Machine.WayHome()
            ?? throw new RefusedException(StatusCodes.Status409Conflict, "No way back was found that is proven from how the machine stands. Bring it to where a card ends, tell of it, and ask again.");
        var number = 2 + replay.Events.Count(happened => happened.Kind is EventKind.Replanned or EventKind.Rebased);
        var folder = $"{LoadedJob.PackFolder}-{number}";
        await store.AddFilesAsync(job, Files(course, folder), stop);
        return new JobEvent
        {
            Id = $"cards-{Guid.NewGuid():N}",
            Kind = EventKind.Replanned,
            At = time,
            Logged = time,
            By = by,
            Plan = course.Plan.Revision,
            File = folder,
            FileHash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(WorkPack.Json(course.Plan)))),
        };
    }

    private static Dictionary<string, byte[]> Files(JobCourse course, string folder) =>
        JobPack.Files(course.Plan, PackTemplates.Standard, course.Settings, out _).ToDictionary(file => $"{folder}/{file.Key}", file => file.Value, StringComparer.Ordinal);
}
