using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Bags;
using ProcScript.Analysis.Crews;
using ProcScript.Analysis.Fluids;
using ProcScript.Analysis.Lifting;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.Settings;
using ProcScript.Analysis.Tools;
using ProcScript.Analysis.Totals;
using ProcScript.Model;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Plans;

/// <summary>Makes the plan of a proven procedure: the steps in words, and the totals over them.</summary>
internal sealed class PlanBuilder
{
    private const string Format = "1";

    private readonly Wordbook _book;
    private readonly Procedure _procedure;
    private readonly StripRun _strip;
    private readonly StepList _list;
    private readonly ImmutableArray<PlannedStep> _steps;
    private readonly JobTimes _times;
    private readonly CardWarnings _warnings;
    private readonly ToolList _tools;
    private readonly PpeList _ppe;
    private readonly ImmutableArray<PlanBag> _bags;
    private readonly IReadOnlyDictionary<int, PartLift> _lifts;
    private readonly EnergyStates _energies;
    private readonly ImmutableArray<PlanTemporary> _temporary;
    private readonly ILookup<(PlanPhase Phase, int Card), PlanLeftOut> _leftOut;
    private readonly IReadOnlyDictionary<(PlanPhase Phase, int Card), PlanStanding> _standings;
    private readonly StepWriter _writer;
    private readonly ImmutableArray<PlanQuestion> _questions;

    private PlanBuilder(Library library, StripRun strip, RefitRun refit, PathSettings settings, IReadOnlyDictionary<string, PlanBag>? labelled = null)
    {
        _book = Wordbook.In(settings.Get(SettingsTable.Language));
        _procedure = strip.Procedure;
        _strip = strip;
        _list = StepList.Of(strip, refit, _book);
        _warnings = CardWarnings.Of(_list.Steps, strip.Facts, _book);
        _lifts = PartLift.Of(_list.Steps, _procedure.Details, settings);
        _steps =
        [
            .. StepRooms.Add([.. WarnedWaits.Add(_list.Steps, _warnings)], _procedure.Machine)
                .Select(step => _lifts.TryGetValue(step.Number, out var lift) ? step with { People = lift.People } : step)
                .Select(step => _procedure.Details.Certificates is { IsEmpty: false } held
                    ? step with { Details = step.Details with { Certificates = [.. held.Union(step.Details.Certificates)] } }
                    : step),
        ];
        _questions = QuestionSteps.Of(library, _procedure, _steps);
        _times = JobTimes.Of(_steps, CrewJob.Of(_steps, strip, refit));
        var marks = MarkLines.Of(_procedure.Machine, _steps);
        _tools = new ToolList(TorqueWrenches.Of(_procedure, library))
        {
            Book = _book,
            HouseTools = settings.Get(SettingsTable.HouseTools),
            Crowfoots = Crowfoots.Of(_procedure, library),
            Markers = Markers.Of(_procedure, library),
            Marks = marks,
            Torques = new TorqueWords(settings.Get(SettingsTable.Torque), _book),
        };
        _ppe = new PpeList(_steps, _procedure.Details, _warnings, _book);
        var loose = LooseHardware.Of(_steps).ToImmutableArray();
        _bags = BagFilling.Fill(loose, (phase, card) => _list.Cards[phase][card], _book, labelled);
        _energies = EnergyStates.Of(_list);
        _temporary = TemporaryList.Of(_steps);
        _leftOut = LeftOutLines.Of(strip, _book);
        _standings = CardStandings.Of(strip, refit, _list, _bags, _temporary, _book);
        _writer = new StepWriter(library, _steps, _warnings, _tools, _bags)
        {
            Which = new WhichIsWhich(loose, _bags, _book),
            Figures = StepFigures.Of(library, settings, _steps),
            Marks = marks,
            Lifts = _lifts,
            Temporary = _temporary,
            StillOpen = StillOpen.Of(strip, refit, _book),
            Energies = _energies,
            HandOvers = HandOvers.Of(strip, refit, _book, _steps, _bags, _temporary),
            Ppe = _ppe,
            JobCertificates = [.. _procedure.Details.Certificates.Select(one => one.Title)],
        };
    }

    /// <summary>Makes the plan of <paramref name="strip"/> and <paramref name="refit"/>, which have been proven.</summary>
    /// <param name="library">The library.</param>
    /// <param name="strip">The strip.</param>
    /// <param name="refit">The refit.</param>
    /// <param name="settings">What the shop has chosen.</param>
    /// <param name="labelled">By the names of joints the bags that their pieces lie in already, where the plan takes up another; null where it takes up none.</param>
    public static Plan Build(Library library, StripRun strip, RefitRun refit, PathSettings settings, IReadOnlyDictionary<string, PlanBag>? labelled = null)
    {
        var plan = new PlanBuilder(library, strip, refit, settings, labelled).Build();
        plan = plan with { Licensed = [.. LicensedWork.In(plan)] };
        plan = library.Texts is { } texts ? PlanTexts.Told(plan, texts, settings.Get(SettingsTable.TextsLanguage)) : plan;
        return plan with { Revision = PlanRevision.Of(plan) };
    }

    /// <summary>The steps of the plan of <paramref name="strip"/> and <paramref name="refit"/>, with the people that they take.</summary>
    public static ImmutableArray<PlannedStep> Steps(Library library, StripRun strip, RefitRun refit, PathSettings settings) =>
        new PlanBuilder(library, strip, refit, settings)._steps;

    private Plan Build() => new()
    {
        Format = Format,
        Language = _book.Language.Tag(),
        Job = _procedure.Job,
        Procedure = _procedure.Name,
        Parameters = [.. _procedure.Parameters.Zip(_procedure.Arguments, (name, value) => new PlanParameter(name, value))],
        Title = _procedure.Title,
        Machine = _procedure.Machine.Name,
        MachineTitle = _procedure.Machine.Title,
        Variant =
        [
            .. _procedure.Machine.Options.Select(option =>
                new PlanOption(option.Name, option.Title, _procedure.Machine.With.Contains(option))),
        ],
        Revision = "",
        Questions = _questions,
        Goals = [.. _procedure.Goals.Select(goal => StepText.Of(goal.Verb, goal.Target, _book))],
        GoalActions = [.. _procedure.Goals.Select(goal => Action(goal.Verb, goal.Target))],
        Alerts = AlertWords.Of(_procedure.Alerts),
        People = _steps.Select(step => step.People).Append(_procedure.Details.People).Append(1).Max(),
        SharedSteps = [.. _steps.Where(step => step.People > 1).Select(step => step.Number)],
        Times = _times.Plan,
        HeaviestLift = Heaviest(),
        Tools = _tools.Of(_steps, _procedure.Details),
        ToolChanges = ToolChangesOf(),
        Orders = OrderList.Of(_steps),
        Consumables = ConsumableList.Of(_steps, _procedure.Details, _book),
        Ppe = _ppe.All,
        JobPpe = [.. _procedure.Details.Ppe.Distinct()],
        JobCertificates = [.. _procedure.Details.Certificates.Select(one => one.Title)],
        Certificates =
        [
            .. _steps.SelectMany(step => CertifiedWork.NamedAt(step).Select(held => (held, step.Number))).GroupBy(pair => pair.held)
                .Select(same => new PlanCertificate(same.Key.Title, [.. same.Select(pair => pair.Number)])),
        ],
        Places = [.. _steps.Where(step => step.Place is not null).GroupBy(step => step.Place!).Select(same => new PlanPlace(same.Key.Title, same.Key.Room, [.. same.Select(step => step.Number)]))],
        Hazards = _warnings.Hazards,
        Energies = [.. _energies.Energies.Select(Energy)],
        Fluids = [.. Targets<Fluid>(Verb.Empty).Select(step => Fluid((Fluid)step.Target!, step))],
        Controls = [.. Targets<Control>(Verb.Set).Select(step => (Control)step.Target!).Distinct().Select(Control)],
        Strip = Cards(PlanPhase.Strip),
        Work = Cards(PlanPhase.Work)[0],
        Refit = Cards(PlanPhase.Refit),
        Items = ItemList.Of(_steps.Select(step => step.Target).OfType<MachineItem>().Concat(_strip.Discards.Select(discard => discard.Item))),
        Rules =
        [
            .. _procedure.Rules.OfType<OrderRule>().Select(rule => new PlanRule(
                Action(rule.Earlier),
                Action(rule.Later))),
        ],
        Bags = _bags,
        Staying = StayingHardware.Of(_steps),
        Temporary = _temporary,
        Discards = [.. _strip.Discards.Select(Discard)],
        FollowUps = [.. _procedure.Rules.OfType<FollowUpRule>().Select(rule => FollowUps.Of(rule, _steps, _tools))],
        Map = HidingMap.Of(_procedure, _steps),
        Sources = _procedure.Files,
    };

    /// <summary>The heaviest lift; of several that weigh the same, the first that is lifted whole. Null where no mass is known.</summary>
    private PlanLift? Heaviest() => _lifts.Values.OrderBy(lift => lift.Step.Number).MaxBy(lift => (lift.Kilograms, lift.Lifted)) is { } heaviest
        ? new PlanLift(heaviest.Step.Part!.Title, heaviest.Kilograms, heaviest.Step.Number, heaviest.People) { Hoist = heaviest.Hoist, InPounds = heaviest.IsInPounds }
        : null;

    private IEnumerable<PlannedStep> Targets<T>(Verb verb)
        where T : MachineItem => _steps.Where(step => step.Verb == verb && step.Target is T);

    private PlanToolChanges ToolChangesOf()
    {
        var (strip, work, refit) = (Changes(PlanPhase.Strip), Changes(PlanPhase.Work), Changes(PlanPhase.Refit));
        return new PlanToolChanges(strip, work, refit, (strip + work + refit) * ToolChanges.SecondsEach);

        int Changes(PlanPhase phase) => ToolChanges.Of(_steps.Where(step => step.Phase == phase && step.Cap is null).Select(step => _tools.Of(step)));
    }

    private PlanEnergy Energy(Energy energy) => new(
        energy.Name,
        energy.Title,
        energy.Isolate ?? "",
        energy.Wait is { } wait ? _book.Print(wait) : "",
        energy.Verify ?? "",
        energy.VerifyExpect is { } limit ? _book.Print(limit) : "",
        energy.Restore ?? "",
        Targets<Energy>(Verb.Isolate).First(step => step.Target == energy).Number,
        Targets<Energy>(Verb.Restore).LastOrDefault(step => step.Target == energy)?.Number ?? 0)
    {
        After = [.. energy.After.Select(first => first.Title)],
        MakeSafe = new SafetyLines(_book).MakeSafe(energy),
        Turns = _energies.Turns(energy),
    };

    private PlanFluid Fluid(Fluid fluid, PlannedStep emptied)
    {
        var changes = _list.Brought.Where(brought => brought.Fluid == fluid).ToList();
        var fillTo = ChargeBand.Of(fluid, changes.Select(brought => brought.Change));
        return new(
            fluid.Name,
            fluid.Title,
            fluid.Charge is { } charge ? _book.Print(charge) : "",
            fluid.Empty ?? "",
            fluid.Fill ?? "",
            emptied.Number,
            emptied.Mirror)
        {
            FillTo = fillTo is null ? "" : _book.Print(fillTo),
            Band = ChargeBand.Band(fillTo) is { } band ? _book.Print(band) : "",
            Changes = [.. changes.Select(brought => FluidWords.Of(brought, _book))],
            LeastRecovered = FluidWords.LeastRecovered(fluid, _book),
        };
    }

    private static PlanAction Action(Verb verb, MachineItem item) => new(ActionTable.Row(verb).Word, item.Name);

    private static PlanAction Action(RefitAnchor anchor) => Action(anchor.Verb, anchor.Target) with
    {
        Position = anchor is { Position: >= 0, Target: Control control } ? control.Positions[anchor.Position] : "",
    };

    private static PlanDiscard Discard(Discard discard) =>
        new(ItemWords.Whole(discard.Item), discard.Because) { Item = discard.Item.Name, After = discard.After };

    private static PlanControl Control(Control control) => new(
        control.Name,
        control.Title,
        ItemWords.Position(control, 0),
        [.. control.Positions.Select((_, position) => ItemWords.Position(control, position))]);

    private ImmutableArray<PlanStage> Cards(PlanPhase phase)
    {
        var steps = _steps.Where(step => step.Phase == phase).ToLookup(step => step.Card);
        return
        [
            .. _list.Cards[phase].Select((title, card) =>
                new PlanStage(title, [.. steps[card].Select(_writer.Write)], _times.Cards.GetValueOrDefault((phase, card)))
                {
                    Energies = _energies.On(phase, card),
                    After = _standings[(phase, card)],
                    LeftOut = [.. _leftOut[(phase, card)]],
                }),
        ];
    }
}
