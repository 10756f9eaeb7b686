using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Needs;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Tests.Needs;

/// <summary>What a single action needs in a single state of a machine.</summary>
internal static class NeedsOf
{
    /// <summary>The needs of an action, one by one.</summary>
    /// <param name="facts">The machine.</param>
    /// <param name="state">How it stands.</param>
    /// <param name="phase">Whether the action is one of the strip or of the refit.</param>
    /// <param name="verb">What is done.</param>
    /// <param name="item">The name of what it is done to.</param>
    /// <param name="value">How many pieces, or the position; 0 where the action has neither.</param>
    public static List<Need> Action(MachineFacts facts, MachineState state, NeedsPhase phase, Verb verb, string item, int value = 0)
    {
        NeedCollector collector = new(facts, state, phase, new HashSet<MachineItem>());
        return [.. collector.Collect(new ActionRequest(verb, facts.Machine.Items[item], value))];
    }

    /// <summary>A need by its sort and its item: <c>PartOut lid</c>.</summary>
    public static string Named(Need need) => $"{need.GetType().Name} {need.Item.Name}";
}
