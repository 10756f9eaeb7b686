using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using ProcScript.Analysis.Following;

namespace ProcScript.Jobs.Freezing;

/// <summary>The courses that frozen libraries came to: a shop's jobs are mostly of the same few texts, and a check takes longer than all else. Safe to use from several threads.</summary>
public sealed class CourseMemory
{
    private readonly ConcurrentDictionary<string, Lazy<JobCourse?>> _courses = new(StringComparer.Ordinal);

    /// <summary>The course that files come to; null where they come to no proven one.</summary>
    /// <param name="files">The files.</param>
    /// <param name="job">The procedure with its arguments.</param>
    /// <param name="with">The options that the machine has.</param>
    /// <param name="stop">Ends the work.</param>
    public JobCourse? CourseOf(IReadOnlyDictionary<string, byte[]> files, string job, ImmutableArray<string> with, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(files);
        return _courses.GetOrAdd(Key(files, job, with), _ => new Lazy<JobCourse?>(() => FrozenJob.CourseOf(files, job, with, stop))).Value;
    }

    private static string Key(IReadOnlyDictionary<string, byte[]> files, string job, ImmutableArray<string> with)
    {
        var key = new StringBuilder($"{job}\n{string.Join(' ', with.Order(StringComparer.Ordinal))}");
        foreach (var (path, content) in files.OrderBy(file => file.Key, StringComparer.Ordinal))
        {
            key.Append('\n').Append(path).Append('\n').Append(Convert.ToHexStringLower(SHA256.HashData(content)));
        }

        return key.ToString();
    }
}
