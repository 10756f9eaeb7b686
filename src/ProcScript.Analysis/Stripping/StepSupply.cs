using ProcScript.Analysis.Actions;
using ProcScript.Analysis.States;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Stripping;

/// <summary>Takes note of what steps lack while a strip is run.</summary>
/// <param name="covers">The steps that get what they lack.</param>
internal sealed class StepSupply(Func<Step, bool> covers)
{
    private readonly List<SuppliedAction> _actions = [];
    private readonly Dictionary<StateVariable, SuppliedAction> _last = [];

    /// <summary>What was lacking, in the order in which it is done.</summary>
    public IReadOnlyList<SuppliedAction> Actions => _actions;

    /// <summary>Whether a step gets what it lacks.</summary>
    public bool Covers(Step step) => covers(step);

    /// <summary>A step lacks an action, which is performed next.</summary>
    public void Add(Step step, ActionRequest request)
    {
        var action = new SuppliedAction(step, request);
        _actions.Add(action);
        _last[ActionTable.Row(request.Verb).Effects[0].Variable(request)] = action;
    }

    /// <summary>
    /// Whether a step finds done what it does, because an earlier step lacked that very action: then the author wrote it too late.
    /// </summary>
    public bool ComesInsteadOf(Step late, ActionRequest request, StateVariable variable)
    {
        if (!_last.TryGetValue(variable, out var action)
            || action.Request.Verb != request.Verb
            || (request.Target is Control && action.Request.Value != request.Value))
        {
            return false;
        }

        action.WrittenLate.Add(late);
        return true;
    }
}

/// <summary>An action that a step lacks.</summary>
/// <param name="Before">The step.</param>
/// <param name="Request">The action.</param>
internal sealed record SuppliedAction(Step Before, ActionRequest Request)
{
    /// <summary>The steps further down that say it too late.</summary>
    public List<Step> WrittenLate { get; } = [];

    /// <summary>The action in words of the language, but for the name of its target.</summary>
    /// <param name="name">The name as the place it goes to can say it.</param>
    public string Words(string name)
    {
        var word = ActionTable.Row(Request.Verb).Word;
        return Request.Target switch
        {
            Joint joint when Request.Verb != Verb.Loosen && Request.Value < joint.Count => $"{word} rest of {name}",
            Control control => $"{word} {name} to {control.Positions[Request.Value]}",
            _ => $"{word} {name}",
        };
    }
}
