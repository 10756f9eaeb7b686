using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace ProcScript.Analysis.Crews;

/// <summary>What a crew has to do, and who they are.</summary>
/// <param name="Tasks">The work, in an order in which one person could do it: every task stands behind those that it waits for.</param>
/// <param name="People">How many people there are, at least one.</param>
public sealed record CrewProblem(ImmutableArray<CrewTask> Tasks, int People)
{
    /// <summary>How much there is of what tasks use beside hands.</summary>
    public ImmutableArray<int> Capacities { get; init; } = [];

    /// <summary>How many of the people are certified, the first of them; all where it is more than there are.</summary>
    public int Certified { get; init; } = int.MaxValue;

    /// <summary>Whether it matters who does a task: somebody is not certified, and something has to be done by somebody who is.</summary>
    [JsonIgnore]
    public bool AsksWho => Certified < People && Tasks.Any(task => task.Certified);

    /// <summary>How many of the people a task holds: those whom it takes, and those who stand clear. Where it takes more than there are, all of them.</summary>
    public int HandsOf(int task) => Tasks[task] is var one && one.StandClear ? People : Math.Min(one.Hands, People);

    /// <summary>Whether a person, counted from 0, is certified.</summary>
    public bool IsCertified(int person) => person < Certified;

    /// <summary>The same for another number of people.</summary>
    public CrewProblem For(int people) => this with { People = people };

    /// <summary>Everything that has to start a while after something else started: by how much.</summary>
    public IEnumerable<CrewLag> Lags()
    {
        for (var task = 0; task < Tasks.Length; task++)
        {
            foreach (var earlier in Tasks[task].After)
            {
                yield return new CrewLag(earlier, task, Tasks[earlier].Duration);
            }

            foreach (var earlier in Tasks[task].AfterHandsOf)
            {
                yield return new CrewLag(earlier, task, Tasks[earlier].Attended);
            }
        }
    }
}

/// <summary>A task starts so long after another at the earliest.</summary>
/// <param name="Earlier">The other, by index.</param>
/// <param name="Later">The task, by index.</param>
/// <param name="Least">The least time from start to start.</param>
public readonly record struct CrewLag(int Earlier, int Later, long Least);
