using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Runs;
using ProcScript.LanguageServer.Jobs;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Model.Machines;
using ProcScript.Model.Names;
using ProcScript.Syntax.Nodes;

namespace ProcScript.LanguageServer.Completing;

/// <summary>What is known around the place where somebody types, worked out once for all that asks.</summary>
/// <param name="asked">The document.</param>
/// <param name="offset">Where one types.</param>
internal sealed class Vicinity(Asked asked, int offset)
{
    private readonly Lazy<ProcedureTrial?> _trial = new(() => JobsInText.TrialAt(asked, offset));
    private readonly Lazy<Machine?> _machine = new(() => JobsInText.MachineAt(asked, offset));

    /// <summary>The document.</summary>
    public Asked Asked => asked;

    /// <summary>Where one types.</summary>
    public int Offset => offset;

    /// <summary>The machine that it is about; null where it is not known.</summary>
    public Machine? Machine => _machine.Value;

    /// <summary>The procedure there with the machine as its steps find it; null where there is none, or the machine has errors.</summary>
    public ProcedureTrial? Trial => _trial.Value;

    /// <summary>What the document speaks of before the place.</summary>
    public Mentions Mentions => field ??= new Mentions(asked, offset);

    /// <summary>Variables, values and options.</summary>
    public ValueChoices Values => field ??= new ValueChoices(asked, offset, Machine);

    /// <summary>
    /// Whoever writes the steps first names what the machine does not have yet: such names that a verb could be meant for, those that the
    /// procedure spoke of last first.
    /// </summary>
    /// <param name="verb">The verb.</param>
    public IEnumerable<string> UndeclaredFor(string verb) => ActionTable.Rows.FirstOrDefault(row => row.Word == verb) is { } row
        ? Undeclared.Where(one => !one.Done.Contains(verb) && (one.Sorts & row.Targets) != 0).Select(one => one.Name)
        : [];

    private ImmutableArray<(string Name, ActionTargets Sorts, ImmutableHashSet<string> Done)> Undeclared
    {
        get
        {
            if (field.IsDefault)
            {
                field = [.. FindUndeclared()];
            }

            return field;
        }
    }

    private IEnumerable<(string, ActionTargets, ImmutableHashSet<string>)> FindUndeclared()
    {
        if (Machine is not { } machine || JobsInText.DeclarationAt(asked, offset) is not ProcedureSyntax procedure)
        {
            return [];
        }

        var named = procedure.DescendantsAndSelf()
            .Where(node => node.Span.End < offset)
            .Select(node => node switch
            {
                GoalSyntax goal => (goal.Target, Verb: goal.Verb.Text, IsStep: false),
                ActionSyntax action => (action.Target, Verb: action.Verb.Text, IsStep: true),
                _ => default,
            })
            .Where(one => one.Target is { Name.Text.Length: > 0 })
            .ToList();
        var declared = named.Count == 0 ? [] : machine.Items.Keys.Select(CanonicalName.Base).ToHashSet(StringComparer.Ordinal);
        return
            from one in named
            where !declared.Contains(one.Target.Name.Text)
            group one by asked.Tree.Text.Slice(one.Target.Span) into same
            orderby same.Last().Target.Span.Start descending
            let sorts = same.Aggregate((ActionTargets)~0, (sorts, one) => sorts & (ActionTable.Rows.FirstOrDefault(row => row.Word == one.Verb)?.Targets ?? (ActionTargets)~0))
            select (same.Key, sorts, same.Where(one => one.IsStep).Select(one => one.Verb).ToImmutableHashSet(StringComparer.Ordinal));
    }
}
