using System.Collections.Immutable;
using ProcScript.Model.Machines;

namespace ProcScript.Jobs.Replays;

/// <summary>What lies in a bag.</summary>
/// <param name="Number">The bag.</param>
/// <param name="Count">How many pieces.</param>
/// <param name="Lines">What they are.</param>
public sealed record BagContents(int Number, int Count, ImmutableArray<BagPieces> Lines)
{
    /// <summary>What lies in the bags that are not empty.</summary>
    /// <param name="replay">The job.</param>
    public static IEnumerable<BagContents> Of(JobReplay replay)
    {
        ArgumentNullException.ThrowIfNull(replay);
        return All(replay).Where(bag => bag.Count > 0);
    }

    /// <summary>What lies in one bag; null where the job has no such bag.</summary>
    /// <param name="replay">The job.</param>
    /// <param name="number">The bag.</param>
    public static BagContents? Of(JobReplay replay, int number)
    {
        ArgumentNullException.ThrowIfNull(replay);
        return All(replay).FirstOrDefault(bag => bag.Number == number);
    }

    private static IEnumerable<BagContents> All(JobReplay replay)
    {
        // What is off of a joint lies in the bags in the order in which they were filled.
        var left = new Dictionary<Joint, int>();
        foreach (var bag in replay.Course.Plan.Bags)
        {
            var lines = ImmutableArray.CreateBuilder<BagPieces>();
            foreach (var line in bag.Contents)
            {
                if (replay.Course.Step(line.StripStep)?.Target is Joint joint)
                {
                    var off = left.GetValueOrDefault(joint, Loose(replay, joint));
                    var here = Math.Min(line.Count, off);
                    left[joint] = off - here;
                    if (here > 0)
                    {
                        lines.Add(new BagPieces(joint.Name, here, line.Title, line.From, line.RefitStep));
                    }
                }
            }

            yield return new BagContents(bag.Number, lines.Sum(line => line.Count), lines.ToImmutable());
        }
    }

    private static int Loose(JobReplay replay, Joint joint) => Math.Max(0, replay.Machine.Off(joint) - replay.Lost.GetValueOrDefault(joint.Name));
}

/// <summary>Pieces of one joint in a bag.</summary>
/// <param name="Item">The joint's name.</param>
/// <param name="Count">How many.</param>
/// <param name="Title">What they are.</param>
/// <param name="From">What they held, in words.</param>
/// <param name="RefitStep">The step at which they go back; 0 where none does.</param>
public sealed record BagPieces(string Item, int Count, string Title, string From, int RefitStep);
