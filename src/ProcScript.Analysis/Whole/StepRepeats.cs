using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Whole;

/// <summary>Steps that stand in a procedure as they stand in an earlier one.</summary>
/// <param name="Procedure">The procedure.</param>
/// <param name="First">The first of the steps.</param>
/// <param name="Earlier">The earlier procedure.</param>
/// <param name="EarlierFirst">The first of the steps there.</param>
/// <param name="Length">How many they are.</param>
/// <param name="IsAllOfEarlier">Whether the earlier procedure has no other steps in its stages.</param>
internal sealed record StepRepeat(Procedure Procedure, Step First, Procedure Earlier, Step EarlierFirst, int Length, bool IsAllOfEarlier);

/// <summary>
/// Finds steps that several procedures of one machine share. Every stretch of the least length is looked up among those that came before;
/// where one is found it is followed as far as both agree, and the search goes on behind it, so that each step is looked at a few times
/// however much is repeated.
/// </summary>
internal sealed class StepRepeats
{
    private readonly int _least;
    private readonly Dictionary<long, (int Procedure, int At)> _seen = [];
    private readonly List<(Procedure Procedure, Step[] Steps, long[] Keys)> _before = [];

    private StepRepeats(int least) => _least = least;

    /// <summary>The repeats among procedures of one machine, in their order; of each procedure one variant.</summary>
    public static IEnumerable<StepRepeat> Among(IEnumerable<Procedure> procedures, int least)
    {
        var repeats = new StepRepeats(least);
        return procedures.SelectMany(procedure => repeats.Add(procedure).ToList()).ToList();
    }

    private IEnumerable<StepRepeat> Add(Procedure procedure)
    {
        // What another procedure brings is written there once already; it only parts what stands before and after it.
        var steps = procedure.Stages.SelectMany(stage => stage.Steps).ToArray();
        var keys = Array.ConvertAll(steps, step => step.Calls.IsEmpty ? KeyOf(step) : 0);
        for (var at = 0; at + _least <= keys.Length;)
        {
            if (!_seen.TryGetValue(Window(keys, at), out var found) || Common(keys, at, _before[found.Procedure].Keys, found.At) is var length && length < _least)
            {
                at++;
                continue;
            }

            var earlier = _before[found.Procedure];
            yield return new StepRepeat(procedure, steps[at], earlier.Procedure, earlier.Steps[found.At], length, length == earlier.Keys.Length);
            at += length;
        }

        _before.Add((procedure, steps, keys));
        for (var at = 0; at + _least <= keys.Length; at++)
        {
            if (Array.IndexOf(keys, 0L, at, _least) < 0)
            {
                _seen.TryAdd(Window(keys, at), (_before.Count - 1, at));
            }
        }
    }

    private static int Common(long[] keys, int at, long[] other, int otherAt)
    {
        var length = 0;
        while (at + length < keys.Length && otherAt + length < other.Length && keys[at + length] != 0 && keys[at + length] == other[otherAt + length])
        {
            length++;
        }

        return length;
    }

    private long Window(long[] keys, int at)
    {
        var hash = 17L;
        for (var i = at; i < at + _least; i++)
        {
            hash = unchecked((hash * 1_000_003) + keys[i]);
        }

        return hash;
    }

    /// <summary>What is done to what, and how many; how it is done may be said otherwise. Never 0.</summary>
    private static long KeyOf(Step step)
    {
        var hash = unchecked(((((long)step.Verb * 31) + (step.Count ?? -1)) * 31) + step.Position);
        foreach (var letter in step.Target?.Name ?? step.Text ?? "")
        {
            hash = unchecked((hash * 1_000_003) ^ letter);
        }

        return hash == 0 ? 1 : hash;
    }
}
