using System.Collections.Concurrent;
using System.Collections.Frozen;

namespace ProcScript.Analysis.Tests.Demo;

/// <summary>
/// Whoever forgets a line of a strip hears of it: any one strip action is taken out, in a plain run one in three, and
/// the check has to name its item.
/// </summary>
public sealed class DeletionTests
{
    /// <summary>Where the procedure without the line is still right, and why.</summary>
    private static readonly FrozenDictionary<string, string> StillRight = new Dictionary<string, string>
    {
        ["replace_drive_unit: undo 3 of shaft_bolts[side]"] = "The rest of the bolts of the flange are then all six.",
    }.ToFrozenDictionary();

    [Fact]
    public void Every_strip_action_that_is_taken_out_is_missed_by_name()
    {
        var unseen = new ConcurrentBag<string>();
        Parallel.ForEach(Deletion.All.Where((_, place) => Depth.IsTaken(place, oneIn: 3)), deletion =>
        {
            var report = deletion.Check();
            if (!deletion.IsFound(report))
            {
                unseen.Add(deletion.ToString());
            }
        });

        Assert.Empty(unseen.Except(StillRight.Keys).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void What_is_still_right_without_a_line_has_no_finding_but_for_words_that_count()
    {
        var excepted = Deletion.All.Where(deletion => StillRight.ContainsKey(deletion.ToString())).ToList();

        Assert.Equal(StillRight.Count, excepted.Count);
        Assert.All(excepted, deletion => Assert.All(deletion.Check().Findings, found => Assert.Equal("PRC8105", found.Finding.Rule.Code)));
    }

    [Fact]
    public void The_demo_library_gives_the_test_something_to_take_out() =>
        Assert.True(Deletion.All.Count() >= 120, $"{Deletion.All.Count()} strip actions");
}
