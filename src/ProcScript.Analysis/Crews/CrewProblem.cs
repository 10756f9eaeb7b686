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

    /// <summary>Who holds each certificate that tasks ask for, people counted from 0.</summary>
    public ImmutableArray<ImmutableArray<int>> Holders { get; init; } = [];

    /// <summary>Whether it matters who does a task: something asks for a certificate that some hold and others do not.</summary>
    [JsonIgnore]
    public bool AsksWho => Tasks.Any(task => task.Certificates.Any(one => Enumerable.Range(0, People).Any(person => !Holds(person, one)) && IsHeld(one)));

    /// <summary>How many of the people a task holds: those whom it takes, and those who stand clear. Where it takes more than there are, all of them.</summary>
    public int HandsOf(int task) => Tasks[task] is var one && one.StandClear ? People : Math.Min(one.Hands, People);

    /// <summary>Whether a person, counted from 0, holds a certificate.</summary>
    public bool Holds(int person, int certificate) => Holders[certificate].Contains(person);

    /// <summary>
    /// The certificates that its people have to hold among them: what it asks for, but for what nobody here holds. None at all where its hands are too
    /// few for all of them: then somebody else has to be called.
    /// </summary>
    public ImmutableArray<int> Asked(int task)
    {
        ImmutableArray<int> held = Tasks[task].Hands == 0 ? [] : [.. Tasks[task].Certificates.Where(IsHeld)];
        return held.IsEmpty || Cover(Enumerable.Range(0, People), held, Math.Min(Tasks[task].Hands, People)) is null ? [] : held;
    }

    /// <summary>A few of some people who hold certificates among them; null where that takes more hands than there are.</summary>
    /// <param name="people">Those who could do it.</param>
    /// <param name="certificates">What they have to hold.</param>
    /// <param name="hands">How many there are to be at the most.</param>
    public IReadOnlyList<int>? Cover(IEnumerable<int> people, IEnumerable<int> certificates, int hands)
    {
        var (free, left, chosen) = (people.ToList(), certificates.ToList(), new List<int>());
        while (left.Count > 0)
        {
            // Who holds most of what is asked for; of equals, who holds least beside it, for others may ask for that.
            var best = free.Where(person => left.Exists(one => Holds(person, one)))
                .OrderByDescending(person => left.Count(one => Holds(person, one))).ThenBy(HeldBy).ThenBy(person => person).DefaultIfEmpty(-1).First();
            if (best < 0 || chosen.Count == hands)
            {
                return null;
            }

            chosen.Add(best);
            free.Remove(best);
            left.RemoveAll(one => Holds(best, one));
        }

        return chosen;
    }

    /// <summary>How many certificates a person holds.</summary>
    public int HeldBy(int person) => Holders.Count(holders => holders.Contains(person));

    private bool IsHeld(int certificate) => Holders[certificate].Any(person => person < People);

    /// <summary>The same for another number of people.</summary>
    public CrewProblem For(int people) => this with { People = people };

    /// <summary>Whether these people hold all that a crew of more is held to.</summary>
    public bool IsAsGoodAs(CrewProblem more)
    {
        ArgumentNullException.ThrowIfNull(more);
        return !more.AsksWho || Enumerable.Range(0, Tasks.Length).All(task => Asked(task).Length == more.Asked(task).Length);
    }

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
