using CsCheck;
using ProcScript.Analysis.Crews;

namespace ProcScript.Exact.Tests;

/// <summary>Problems that nobody wrote.</summary>
internal static class Problems
{
    /// <summary>
    /// Up to ten tasks for up to three people: some for two or more, some that run by themselves, some that nobody works beside, some that want
    /// certificates, a place with room for one and one with room for two.
    /// </summary>
    public static Gen<CrewProblem> Small { get; } = Of(10);

    /// <summary>The same with up to thirty tasks.</summary>
    public static Gen<CrewProblem> Larger { get; } = Of(30);

    /// <summary>One problem, a mark at which all of it is over, and another: as many people as the first has, who hold what they hold there.</summary>
    public static CrewProblem Joined(CrewProblem one, CrewProblem two)
    {
        var mark = one.Tasks.Length;
        return one with
        {
            Tasks =
            [
                .. one.Tasks,
                new CrewTask(0, 0, 0) { After = [.. Enumerable.Range(0, mark)] },
                .. two.Tasks.Select(task => task with
                {
                    After = [mark, .. task.After.Select(earlier => earlier + mark + 1)],
                    AfterHandsOf = [.. task.AfterHandsOf.Select(earlier => earlier + mark + 1)],
                }),
            ],
        };
    }

    private static Gen<CrewProblem> Of(int most) => Gen.Select(
        Gen.Select(Gen.Int[0, 9], Gen.Frequency((3, Gen.Const(0)), (1, Gen.Int[1, 12])), Gen.Int[1, 3], Gen.Int[0, 1000].Array[0, 3], Gen.Int[0, 11]).Array[1, most],
        Gen.Int[1, 3],
        Gen.Int[0, 3],
        (rows, people, certified) => new CrewProblem(
            [
                .. rows.Select((row, at) => new CrewTask(row.Item1, row.Item1 + row.Item2, row.Item3)
                {
                    After = at == 0 ? [] : [.. row.Item4.Where(before => before % 3 > 0).Select(before => before % at).Distinct().Order()],
                    AfterHandsOf = at == 0 ? [] : [.. row.Item4.Where(before => before % 3 == 0).Select(before => before % at).Distinct().Order()],
                    StandClear = row.Item5 == 0,
                    Certificates = row.Item5 switch { 1 => [0], 2 => [1], 6 => [0, 1], _ => [] },
                    Uses = row.Item5 switch { 3 or 4 or 5 => [new CrewUse(0, 1)], 7 or 8 => [new CrewUse(1, Math.Clamp(row.Item3, 1, 2))], _ => [] },
                }),
            ],
            people)
        {
            Capacities = [1, 2],
            // Nobody else, everybody, or each of them one of the two.
            Holders = certified == 0 ? [[0, 1, 2, 3], [0, 1, 2, 3]] : [[.. Enumerable.Range(0, certified)], certified == 3 ? [1] : [people - 1]],
        });
}
