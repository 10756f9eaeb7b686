using System.Collections.Concurrent;

namespace ProcScript.Analysis.Tests.Demo;

/// <summary>Whoever forgets a line of a strip hears of it: any one strip action is taken out, and the check has to name its item.</summary>
public sealed class DeletionTests
{
    [Fact]
    public void Every_strip_action_that_is_taken_out_is_missed_by_name()
    {
        var unseen = new ConcurrentBag<string>();
        Parallel.ForEach(Deletion.All, deletion =>
        {
            var report = deletion.Check();
            if (!deletion.IsFound(report))
            {
                unseen.Add(deletion.ToString());
            }
        });

        Assert.Empty(unseen.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_demo_library_gives_the_test_something_to_take_out() =>
        Assert.True(Deletion.All.Count() >= 120, $"{Deletion.All.Count()} strip actions");
}
