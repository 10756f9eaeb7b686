using System.Collections.Immutable;
using System.Security.Cryptography;
using ProcScript.Analysis.Following;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Replays;
using ProcScript.Jobs.Stores;

namespace ProcScript.Cards;

/// <summary>The cards of another course than the one that a job has followed, to be kept beside the earlier ones.</summary>
/// <param name="Course">The course.</param>
/// <param name="Done">The steps of it that are done as the machine stands.</param>
/// <param name="Number">Which cards of the job they are, from 2.</param>
/// <param name="Files">Their files, by their paths in the job.</param>
/// <param name="Faults">What is wrong with the templates.</param>
public sealed record NewCards(JobCourse Course, ImmutableArray<int> Done, int Number, IReadOnlyDictionary<string, byte[]> Files, ImmutableArray<TemplateFault> Faults)
{
    /// <summary>The folder of the cards.</summary>
    public string PackFolder => $"{LoadedJob.PackFolder}-{Number}";

    /// <summary>The folder of the texts that they are made from, where these are newer ones.</summary>
    public string LibraryFolder => $"{LoadedJob.LibraryFolder}-{Number}";

    /// <summary>How many of their steps are left to do.</summary>
    public int Left => Course.Steps.Length - Done.Length;

    /// <summary>Makes them.</summary>
    /// <param name="replay">The job so far.</param>
    /// <param name="course">The course that it goes on by.</param>
    /// <param name="done">The steps of it that are done as the machine stands.</param>
    public static NewCards Of(JobReplay replay, JobCourse course, ImmutableArray<int> done)
    {
        ArgumentNullException.ThrowIfNull(replay);
        ArgumentNullException.ThrowIfNull(course);
        var number = 2 + replay.Events.Count(happened => happened.Kind is EventKind.Replanned or EventKind.Rebased);
        var files = JobPack.Files($"{LoadedJob.PackFolder}-{number}", course.Plan, PackTemplates.Standard, course.Settings, out var faults);
        return new NewCards(course, done, number, files, faults);
    }

    /// <summary>The event that says that the job goes on by them.</summary>
    /// <param name="told">Who tells it, and when.</param>
    /// <param name="folder">The folder that it is about.</param>
    public JobEvent Told(JobEvent told, string folder)
    {
        ArgumentNullException.ThrowIfNull(told);
        return told with
        {
            Plan = Course.Plan.Revision,
            Count = Left,
            File = folder,
            FileHash = Convert.ToHexStringLower(SHA256.HashData(Files[$"{PackFolder}/{JobPack.PlanFile}"])),
        };
    }
}
