using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Drafting;
using ProcScript.Analysis.Machines;
using ProcScript.Model;
using ProcScript.Model.Machines;
using ProcScript.Model.Names;
using ProcScript.Model.Procedures;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Reaching;

/// <summary>What is asked for, and the procedure that a strip of it makes: its steps say what the procedures on the machine say of the same actions.</summary>
internal sealed class ReachJob
{
    private readonly GivenDetails _given;
    private readonly ImmutableArray<string> _files;
    private readonly Library _library;

    /// <summary>Makes a job.</summary>
    /// <param name="library">The library.</param>
    /// <param name="facts">The machine.</param>
    /// <param name="items">What is asked for.</param>
    /// <param name="purpose">What it is for.</param>
    public ReachJob(Library library, MachineFacts facts, ImmutableArray<MachineItem> items, ReachPurpose purpose)
    {
        (_library, Facts, Items, Purpose) = (library, facts, items, purpose);
        Procedures = [.. library.Procedures.Where(procedure => procedure.Machine.Declared == facts.Machine.Declared)];
        _given = GivenDetails.In(Procedures);
        _files =
        [
            .. FileUses.Reach(
                [facts.Machine.Declared.Path, .. Procedures.SelectMany(procedure => procedure.Files)],
                path => library.Trees.TryGetValue(path, out var tree) ? FileUses.Of(path, tree) : []).Order(StringComparer.Ordinal),
        ];
        Title = string.Join(" and ", items.Select(item => ActionTable.Row(GoalVerb(item)).Phrase(Called(item))).Select((phrase, index) => index == 0 ? phrase : Small(phrase)));
        Name = Free(string.Join('_', items.Take(3).Select(item => CanonicalName.Base(item.Name) + string.Concat(CanonicalName.Indices(item.Name).Select(index => "_" + index)))));
    }

    /// <summary>The machine.</summary>
    public MachineFacts Facts { get; }

    /// <summary>What is asked for.</summary>
    public ImmutableArray<MachineItem> Items { get; }

    /// <summary>What it is for.</summary>
    public ReachPurpose Purpose { get; }

    /// <summary>The name of the procedure, which nothing in the library has.</summary>
    public string Name { get; }

    /// <summary>What people call it.</summary>
    public string Title { get; }

    /// <summary>The procedures on the machine, in all variants.</summary>
    public ImmutableArray<Procedure> Procedures { get; }

    /// <summary>The jobs that are about something which is asked for: what keeps people safe in them as a whole holds here too.</summary>
    private IEnumerable<Procedure> Same => Procedures.Where(procedure => procedure.Goals.Any(goal => Items.Any(item => item.Name == goal.Target.Name)));

    /// <summary>What is wanted.</summary>
    public ImmutableArray<FreeingGoal> Goals =>
    [
        .. Items.Select(item => new FreeingGoal(
            Purpose switch
            {
                ReachPurpose.Inspect => FreeingKind.Reached,
                ReachPurpose.Replace => FreeingKind.Renewed,
                _ => item is Part ? FreeingKind.Out : FreeingKind.Off,
            },
            item)),
    ];

    /// <summary>What things cost in it.</summary>
    public ReachCosts Costs(ReachWeights weights) =>
        new(Facts, (verb, item) => _given.Of(Facts.Machine, verb, item), weights, Purpose == ReachPurpose.Replace ? [.. Items.OfType<Part>()] : []);

    /// <summary>The verb of a goal.</summary>
    public Verb GoalVerb(MachineItem item) => Purpose switch
    {
        ReachPurpose.Inspect => Verb.Inspect,
        ReachPurpose.Replace => Verb.Replace,
        _ => ActionTable.Opening(item).Verb,
    };

    /// <summary>The procedure that does some actions, and then renews or looks at what has to be.</summary>
    /// <param name="actions">The actions of the strip, in order.</param>
    /// <param name="renewed">What is replaced.</param>
    public Procedure Procedure(IEnumerable<ActionRequest> actions, IEnumerable<MachineItem> renewed)
    {
        var machine = Facts.Machine;
        List<ActionRequest> strip = [.. actions];
        List<MachineItem> replaced = [.. renewed];
        strip.AddRange(WithoutTemporary(strip, replaced));
        return new Procedure
        {
            Name = Name,
            Arguments = [],
            Title = Title,
            Declared = machine.Declared,
            Machine = machine,
            Goals = [.. Items.Select(item => new Goal(GoalVerb(item), item, item.Declared))],
            Alerts = [.. Same.SelectMany(procedure => procedure.Alerts).DistinctBy(alert => (alert.Word, alert.Text))],
            Details = Same.Any(procedure => !procedure.Details.Ppe.IsEmpty || !procedure.Details.Certificates.IsEmpty)
                ? ActionDetails.None with
                {
                    Certificates = [.. Same.SelectMany(procedure => procedure.Details.Certificates).Distinct()],
                    Ppe = [.. Same.SelectMany(procedure => procedure.Details.Ppe).Distinct(StringComparer.Ordinal)],
                }
                : ActionDetails.None,
            Stages = Stages(strip),
            Work =
            [
                .. replaced.Select(item => Step(new ActionRequest(Verb.Replace, item))),
                .. Purpose == ReachPurpose.Inspect ? Items.Select(item => Step(new ActionRequest(Verb.Inspect, item))) : [],
            ],
            Rules = Checks(strip),
            Files = _files,
            HasErrors = false,
        };
    }

    /// <summary>What is temporary and would go away with what is replaced comes off first.</summary>
    private IEnumerable<ActionRequest> WithoutTemporary(List<ActionRequest> strip, List<MachineItem> replaced) =>
        from fitted in strip
        where fitted.Verb == Verb.Fit && replaced.OfType<Part>().Any(part => fitted.Part != part && fitted.Part.IsWithin(part))
        from request in Facts.Ties(fitted.Part).Where(joint => joint.Role == JointRole.Held)
            .Select(joint => new ActionRequest(ActionTable.Opening(joint).Verb, joint, joint.Count))
            .Append(new ActionRequest(Verb.Remove, fitted.Part))
        select request;

    /// <summary>
    /// What makes safe is a card of its own; every other ends where a part is out or aside. What follows the last of them goes with it.
    /// </summary>
    private ImmutableArray<Stage> Stages(List<ActionRequest> strip)
    {
        var stages = new List<(string Title, List<Step> Steps)>();
        var safe = strip.TakeWhile(action => action.Target is Energy or Fluid or Control).ToList();
        if (safe.Count > 0)
        {
            stages.Add(("Make safe", safe.ConvertAll(Step)));
        }

        var steps = new List<Step>();
        foreach (var action in strip.Skip(safe.Count))
        {
            steps.Add(Step(action));
            if (action.Verb is Verb.Remove or Verb.Aside)
            {
                Add(DraftWords.Capital(action.Part.Title));
            }
        }

        if (steps.Count > 0)
        {
            Add(DraftWords.Capital(steps[^1].Target is Joint joint ? joint.Owner.Title : steps[^1].Target!.Title));
        }

        return [.. stages.Select(stage => new Stage(stage.Title, [.. stage.Steps], Facts.Machine.Declared))];

        void Add(string title)
        {
            // What goes aside and then comes off is one card.
            if (stages.Count > 0 && stages[^1].Title == title)
            {
                stages[^1].Steps.AddRange(steps);
            }
            else
            {
                stages.Add((title, steps));
            }

            steps = [];
        }
    }

    private Step Step(ActionRequest request) => new()
    {
        Verb = request.Verb,
        Target = request.Target,
        Position = request.Target is Control ? request.Value : -1,
        Details = _given.Of(Facts.Machine, request.Verb, request.Target!),
        VerbSpan = request.Target!.Declared,
        TargetSpan = request.Target.Declared,
        Source = request.Target.Declared,
    };

    /// <summary>
    /// The checks that other jobs on the machine make before or after an energy or a fluid comes back, or once it is, as far as they ask for nothing that
    /// this one does not touch: a leak is looked for after whatever job.
    /// </summary>
    private ImmutableArray<RefitRule> Checks(List<ActionRequest> strip)
    {
        var touched = strip.Select(action => action.Target).Where(item => item is Energy or Fluid).Select(item => item!.Name).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. Procedures.SelectMany(procedure => procedure.Rules).OfType<CheckRule>()
                .Where(rule => rule.Verb == Verb.Check && IsAbout(rule, touched))
                .DistinctBy(rule => rule.Text)
                .Select(rule => rule with
                {
                    Calls = [],
                    Before = Here(rule.Before),
                    After = Here(rule.After),
                    Conditions = [.. rule.Conditions.Select(condition => condition with { Item = Facts.Machine.Items[condition.Item.Name] })],
                }),
        ];
    }

    /// <summary>Whether a check is about fluids and energies that the job touches, and about a fluid above all.</summary>
    private static bool IsAbout(CheckRule rule, HashSet<string> touched)
    {
        var anchor = rule.Before ?? rule.After;
        return (anchor?.Target is Fluid || rule.Conditions.Any(condition => condition.State == NeededState.Full))
            && (anchor is null || touched.Contains(anchor.Target.Name))
            && rule.Conditions.All(condition => condition.Phase == NeedsPhase.Both && condition.Ways.IsEmpty
                && condition.State is NeededState.Full or NeededState.Live && touched.Contains(condition.Item.Name));
    }

    private RefitAnchor? Here(RefitAnchor? anchor) => anchor is null ? null : anchor with { Target = Facts.Machine.Items[anchor.Target.Name] };

    private string Free(string wanted)
    {
        var verb = Purpose switch { ReachPurpose.Inspect => "reach", ReachPurpose.Replace => "replace", _ => "take_off" };
        var taken = _library.Procedures.Select(procedure => procedure.Name)
            .Concat(_library.Machines.Select(machine => machine.Name)).Concat(_library.Kinds.Select(kind => kind.Name)).Concat(_library.Tools.Select(tool => tool.Name))
            .ToHashSet(StringComparer.Ordinal);
        var name = $"{verb}_{wanted}";
        for (var number = 2; taken.Contains(name); number++)
        {
            name = $"{verb}_{wanted}_{number}";
        }

        return name;
    }

    private static string Called(MachineItem item) => $"the {item.Title}";

    private static string Small(string phrase) => char.ToLowerInvariant(phrase[0]) + phrase[1..];
}
