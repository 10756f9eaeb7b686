using ProcScript.Model.Machines;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Procedures;

/// <summary>
/// What authors say of actions, so that a <c>strip</c> says the same of those that it puts in: what the procedures of a machine write in the blocks of
/// their steps, joined by verb and item. It depends neither on the order of the procedures nor on how often one of them is unrolled.
/// </summary>
public sealed class GivenDetails
{
    private readonly Dictionary<(SourceSpan Machine, Verb Verb, string Item), ActionDetails> _details;

    private GivenDetails(Dictionary<(SourceSpan Machine, Verb Verb, string Item), ActionDetails> details) => _details = details;

    /// <summary>Gathers what some procedures say.</summary>
    public static GivenDetails In(IEnumerable<Procedure> procedures)
    {
        var said = new Dictionary<(SourceSpan Machine, Verb Verb, string Item), List<ActionDetails>>();
        foreach (var procedure in procedures)
        {
            foreach (var step in procedure.Stages.SelectMany(stage => stage.Steps))
            {
                if (step.Target is { } item && Of(step) is { } details)
                {
                    // What stands at a strip is about taking its part out.
                    var verb = step.Verb == Verb.Strip ? Verb.Remove : step.Verb;
                    var key = (procedure.Machine.Declared, verb, item.Name);
                    if (!said.TryGetValue(key, out var all))
                    {
                        said.Add(key, all = []);
                    }

                    all.Add(details);
                }
            }
        }

        return new GivenDetails(said.ToDictionary(one => one.Key, one => DetailsAgreement.Of(one.Value)));
    }

    /// <summary>What is said of an action; nothing where nobody says anything.</summary>
    public ActionDetails Of(Machine machine, Verb verb, MachineItem item)
    {
        ArgumentNullException.ThrowIfNull(machine);
        ArgumentNullException.ThrowIfNull(item);
        return _details.GetValueOrDefault((machine.Declared, verb, item.Name), ActionDetails.None);
    }

    /// <summary>Whether another says the same of every action.</summary>
    public bool IsSame(GivenDetails other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return _details.Count == other._details.Count
            && _details.All(one => other._details.TryGetValue(one.Key, out var said) && DetailsAgreement.Key(said) == DetailsAgreement.Key(one.Value));
    }

    /// <summary>The block of a step with the alerts before it; null where there is neither.</summary>
    private static ActionDetails? Of(Step step) => step.Alerts.IsEmpty
        ? ReferenceEquals(step.Details, ActionDetails.None) ? null : step.Details
        : step.Details with { Alerts = step.Alerts.AddRange(step.Details.Alerts) };
}
