using ProcScript.Analysis.Actions;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Needs;

/// <summary>What a test under power needs as a whole: all that its actions need and do not do for each other.</summary>
internal static class TestNeeds
{
    /// <summary>Adds it.</summary>
    public static void Add(TestRule test, NeedCollector collector)
    {
        foreach (var energy in test.Powered)
        {
            collector.Add(new EnergyProvedDead(energy));
        }

        var first = collector.Count;
        foreach (var energy in test.Powered)
        {
            var restore = Restore(test, energy);
            ClearNeeds.Reached(restore, collector);
            PowerNeeds.AllOnItClosed(restore, collector);
            foreach (var need in collector.Isolating().Collect(Isolate(energy)))
            {
                collector.AddOnce(need);
            }
        }

        foreach (var step in test.Steps)
        {
            collector.Add(step.Conditions);
        }

        collector.Drop(first, need => need.Item is Energy energy && test.Powered.Contains(energy));
    }

    /// <summary>The energy comes back for a test.</summary>
    public static ActionRequest Restore(TestRule test, Energy energy) => new(Verb.Restore, energy)
    {
        Open = [.. test.Open.Select(open => open.Item)],
        IsForTest = true,
    };

    /// <summary>It is isolated after the test, and proved to be off.</summary>
    public static ActionRequest Isolate(Energy energy) => new(Verb.Isolate, energy, (int)EnergyState.Dead);
}
