using System.Collections.Immutable;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Settings;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;
using ProcScript.Model.Texts;

namespace ProcScript.Analysis.Tools;

/// <summary>The tools that the steps take, so that nobody walks back for one.</summary>
internal sealed class ToolList(TorqueWrenches wrenches)
{
    private const string AngleGauge = "angle gauge";

    /// <summary>The language that what the list adds is told in.</summary>
    public Wordbook Book { get; init; } = Wordbook.English;

    /// <summary>The tools that every bench has, by name or by title.</summary>
    public ImmutableArray<string> HouseTools { get; init; } = [];

    /// <summary>The crowfoots of the catalog.</summary>
    public Crowfoots Crowfoots { get; init; } = new([]);

    /// <summary>What marks are made with.</summary>
    public Markers Markers { get; init; } = new([]);

    /// <summary>Where marks are made; null where none are.</summary>
    public MarkLines? Marks { get; init; }

    /// <summary>How torques are told.</summary>
    public TorqueWords Torques { get; init; } = new(SettingsTable.Torque.BuiltIn, Wordbook.English);

    private readonly Dictionary<PlannedStep, ImmutableArray<string>> _told = new(ReferenceEqualityComparer.Instance);

    private string TorqueWrench => Book.Say("tool.torque-wrench");

    /// <summary>
    /// The titles of a step's tools: those of the kind, the item and the action, of the first two only what serves its direction, and a torque
    /// wrench where there is a torque and none of them is one: the smallest of the catalog that covers it, else any. A torque with an angle after
    /// it takes an angle gauge as well, and where only a spanner fits, a crowfoot takes its place.
    /// </summary>
    public ImmutableArray<string> Of(PlannedStep step)
    {
        if (!_told.TryGetValue(step, out var titles))
        {
            _told.Add(step, titles = Titles(step));
        }

        return titles;
    }

    private ImmutableArray<string> Titles(PlannedStep step)
    {
        var tools = Item(step).Concat(step.Details.Tools).Distinct().ToList();
        var torque = Torque(step);
        var spanner = torque is null ? null : Crowfoots.Spanner(tools);
        var titles = tools.Select(tool => tool == spanner ? Crowfoots.Title(tool, Book) : ItemWords.Of(tool, Book)).Distinct().ToList();
        if (torque is not null)
        {
            if (!tools.Exists(IsTorqueWrench))
            {
                titles.Add(wrenches.For(torque, spanner is not null) is { } wrench ? ItemWords.Of(wrench, Book) : TorqueWrench);
            }

            if (torque.IsToAngle && !titles.Exists(title => title.Contains(AngleGauge, StringComparison.OrdinalIgnoreCase)))
            {
                titles.Add(Book.Say("tool.angle-gauge"));
            }
        }

        titles.AddRange(MarkedWith(step, torque).Where(title => !titles.Contains(title)).Distinct().ToList());
        return [.. titles];
    }

    /// <summary>What marks are made with at a step: before things come apart, and on the heads before they are turned by an angle.</summary>
    private IEnumerable<string> MarkedWith(PlannedStep step, TighteningTorque? torque) =>
        [.. (Marks?.Made(step.Number) ?? []).Select(mark => Markers.For(mark, Book)).OfType<string>(), .. torque is { IsToAngle: true } ? [Markers.Paints(Book)] : Array.Empty<string>()];

    /// <summary>The crowfoot that a step is tightened with; empty where it takes none.</summary>
    public string Crowfoot(PlannedStep step)
    {
        var tools = Torque(step) is null ? [] : Item(step).Concat(step.Details.Tools).ToList();
        return Crowfoots.Spanner(tools) is { } spanner ? Crowfoots.Title(spanner, Book) : tools.Find(Crowfoots.IsCrowfoot) is { } own ? ItemWords.Of(own, Book) : "";
    }

    /// <summary>
    /// In order of first use, those of the job as a whole first, for every step may need them, and last those that every bench has; a torque wrench
    /// that is not in the catalog with the range that it has to cover.
    /// </summary>
    public ImmutableArray<PlanTool> Of(ImmutableArray<PlannedStep> steps, ActionDetails job)
    {
        var house = House(steps, job);
        var ofJob = job.Tools.Select(tool => ItemWords.Of(tool, Book)).ToHashSet(StringComparer.Ordinal);
        var uses = job.Tools.SelectMany(tool => steps.Select(step => (Title: ItemWords.Of(tool, Book), Step: step.Number)))
            .Concat(steps.SelectMany(step => Of(step).Select(title => (Title: title, Step: step.Number))));
        var crowfoots = steps.Select(Crowfoot).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. uses.GroupBy(use => use.Title, use => use.Step).OrderBy(tool => house.Contains(LibraryTexts.Plain(tool.Key)) ? 1 : 0).Select(tool => new PlanTool(
                tool.Key == TorqueWrench ? RangedWrench(steps) : tool.Key,
                tool.First(),
                tool.Distinct().Count())
            {
                Count = Caps(steps, tool.Key),
                IsCrowfoot = crowfoots.Contains(tool.Key),
                OfJob = ofJob.Contains(tool.Key),
                OfHouse = house.Contains(LibraryTexts.Plain(tool.Key)),
            }),
        ];
    }

    /// <summary>How many of a cap are on at once at the most; 0 of any other tool.</summary>
    private int Caps(ImmutableArray<PlannedStep> steps, string title)
    {
        var (on, most) = (0, 0);
        foreach (var step in steps.Where(step => step.Cap is { } cap && ItemWords.Of(cap.Tool, Book) == title))
        {
            on += step.Verb == Verb.Cap ? step.Count : -step.Count;
            most = Math.Max(most, on);
        }

        return most;
    }

    /// <summary>The titles of those tools of the job that every bench has.</summary>
    private HashSet<string> House(ImmutableArray<PlannedStep> steps, ActionDetails job)
    {
        var titles = HouseTools.ToHashSet(StringComparer.OrdinalIgnoreCase);
        if (titles.Count > 0)
        {
            var tools = steps.SelectMany(step => Item(step).Concat(step.Details.Tools)).Concat(job.Tools).Concat(wrenches.All).Concat(Markers.All);
            titles.UnionWith([.. tools.Where(tool => titles.Contains(tool.Name)).Select(tool => LibraryTexts.Plain(ItemWords.Of(tool, Book)))]);
        }

        return titles;
    }

    /// <summary>The titles of the tools of an action of the strip, where nothing is tightened.</summary>
    public static ImmutableArray<string> Of(PerformedAction action)
    {
        var said = StepOrigin.Details(action).Tools;
        return action.Target switch
        {
            Joint when action.Verb == Verb.Cap => [],
            Joint joint when action.Changes.Length > 0 => Titles(joint.Kind.Drive, joint.Kind.Tools, joint.Tools, said),
            Joint or null => Titles(null, said),
            var item => Titles(null, item.Tools, said),
        };
    }

    /// <summary>What tools are called, each once.</summary>
    private static ImmutableArray<string> Titles(Tool? first, params ReadOnlySpan<ImmutableArray<Tool>> others)
    {
        var titles = new List<string>();
        if (first is not null)
        {
            titles.Add(ItemWords.Of(first, Wordbook.English));
        }

        foreach (var tools in others)
        {
            foreach (var tool in tools)
            {
                if (ItemWords.Of(tool, Wordbook.English) is var title && !titles.Contains(title))
                {
                    titles.Add(title);
                }
            }
        }

        return [.. titles];
    }

    /// <summary>How tight a step tightens; null where it leaves all slack or none is given. Once more means to the last torque, and no angle.</summary>
    public static TighteningTorque? Torque(PlannedStep step)
    {
        var torque = step is { Joint: { } joint, LeavesSlack: false } && (step.Closes || step.Tightens) ? step.Details.Torque ?? joint.Torque : null;
        return torque is not null && step.Verb == Verb.Retorque ? new TighteningTorque([torque.Final], []) : torque;
    }

    /// <summary>Whether a tool is a torque wrench, by its range or its title.</summary>
    public static bool IsTorqueWrench(Tool tool) =>
        tool.Range is not null || tool.Title.Contains("torque", StringComparison.OrdinalIgnoreCase);

    // An author's own wrench may have the same title, and be taken where nothing is tightened.
    private string RangedWrench(ImmutableArray<PlannedStep> steps) =>
        steps.Where(step => Of(step).Contains(TorqueWrench)).Select(Torque).OfType<TighteningTorque>().SelectMany(torque => torque.Stages).ToList()
            is { Count: > 0 } torques ? $"{TorqueWrench}, {Torques.Range(torques)}" : TorqueWrench;

    /// <summary>What the kind and the item ask for; where something goes on, not what only takes off.</summary>
    private static IEnumerable<Tool> Item(PlannedStep step) =>
        step.Phase == PlanPhase.Refit && !step.Opens ? Named(step).Where(tool => !TakingOff.Is(tool)) : Named(step);

    private static IEnumerable<Tool> Named(PlannedStep step) => step switch
    {
        { Cap: { } cap } => step.Verb == Verb.Cap ? [cap.Tool] : [],
        { Joint: { } joint } when step.Opens || step.Closes || step.Tightens || step.Verb == Verb.Loosen =>
            Crowfoots.ToolsOf(joint),
        { Target: Energy energy } => OfEnergy(step, energy),
        { Joint: null, Target: { } item } => item.Tools,
        _ => [],
    };

    /// <summary>What measures is for the proof alone, and all else for cutting the energy off and bringing it back.</summary>
    private static IEnumerable<Tool> OfEnergy(PlannedStep step, Energy energy)
    {
        var measures = energy.Tools.Where(Measuring.Is);
        var place = step.EndsProved ? energy.VerifyAt?.Tools ?? [] : [];
        return step switch
        {
            { Verb: Verb.Verify } => measures.Any() ? [.. measures, .. place] : [.. energy.Tools, .. place],
            { EndsProved: true } => [.. energy.Tools, .. place],
            _ => energy.Tools.Except(measures),
        };
    }
}
