using System.Collections.Immutable;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Bags;
using ProcScript.Analysis.Crews;
using ProcScript.Analysis.Lifting;
using ProcScript.Analysis.Machines.Documents;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Analysis.Tools;
using ProcScript.Analysis.Totals;
using ProcScript.Model;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Plans;

/// <summary>Writes the lines of the cards.</summary>
internal sealed class StepWriter
{
    private readonly Library _library;
    private readonly ImmutableArray<PlannedStep> _steps;
    private readonly ToolList _tools;
    private readonly Renewals _renewals;
    private readonly Wordbook _book;
    private readonly ILookup<int, int> _awaitedBy;
    private readonly CardWarnings _warnings;
    private readonly StepPlaces _places;
    private readonly ILookup<int, int> _bags;
    private readonly ILookup<int, int> _emptied;

    /// <summary>Takes what a line says from elsewhere in the plan.</summary>
    public StepWriter(
        Library library,
        ImmutableArray<PlannedStep> steps,
        CardWarnings warnings,
        ToolList tools,
        ImmutableArray<PlanBag> bags)
    {
        _library = library;
        _steps = steps;
        _warnings = warnings;
        _tools = tools;
        _renewals = new Renewals(steps);
        _book = tools.Book;
        _places = StepPlaces.Of(steps);
        _bags = bags
            .SelectMany(bag => bag.Contents
                .SelectMany(line => new[] { line.StripStep, line.RefitStep })
                .Select(step => (Step: step, bag.Number)))
            .ToLookup(use => use.Step, use => use.Number);
        _awaitedBy = steps.SelectMany(step => step.WaitsFor.Select(cured => (Cured: cured, step.Number)))
            .ToLookup(wait => wait.Cured, wait => wait.Number);
        _emptied = bags.ToLookup(bag => bag.EmptyAt, bag => bag.Number);
    }

    /// <summary>Which piece a step is about, where others fit the same holes.</summary>
    public required WhichIsWhich Which { get; init; }

    /// <summary>Which pictures stand where.</summary>
    public required StepFigures Figures { get; init; }

    /// <summary>Where marks are made, and where they line up.</summary>
    public required MarkLines Marks { get; init; }

    /// <summary>The lifts by their steps.</summary>
    public required IReadOnlyDictionary<int, PartLift> Lifts { get; init; }

    /// <summary>What is still open at each step that brings an energy back.</summary>
    public required IReadOnlyDictionary<int, ImmutableArray<PlanOpenItem>> StillOpen { get; init; }

    /// <summary>What is on the machine for the job alone.</summary>
    public required ImmutableArray<PlanTemporary> Temporary { get; init; }

    /// <summary>How the energies stand at each step.</summary>
    public required EnergyStates Energies { get; init; }

    /// <summary>What is handed over at each step at which the job stops.</summary>
    public required IReadOnlyDictionary<int, PlanHandOver> HandOvers { get; init; }

    /// <summary>What people wear.</summary>
    public required PpeList Ppe { get; init; }

    /// <summary>What somebody must hold on the whole job.</summary>
    public required ImmutableArray<string> JobCertificates { get; init; }

    /// <summary>Writes the line of a step.</summary>
    public PlanStep Write(PlannedStep step) => new()
    {
        Number = step.Number,
        Verb = ActionTable.Row(step.Verb).Word,
        Text = StepText.Of(step),
        Item = step.Target?.Name ?? "",
        ItemTitle = step.Target?.Title ?? "",
        Where = _places.Of(step),
        Count = step.Count,
        Position = step is { Position: >= 0, Target: Control control } ? control.Positions[step.Position] : "",
        Needs = ConditionDocuments.Of(step.Conditions),
        Open = [.. step.Open.Select(open => open.Item.Name)],
        Test = step.Test,
        Renewed = step.Renewed,
        How = StepProse.How(step, Energies.MadeSafe.ContainsKey(step.Number)),
        Alerts = _warnings[step.Number],
        Tools = _tools.Of(step),
        Bags = [.. _bags[step.Number].Distinct()],
        EmptiesBags = [.. _emptied[step.Number]],
        Which = Which.Of(step.Number),
        Turn = TurnWords.Of(step),
        Torque = ToolList.Torque(step) is { } torque ? _tools.Torques.Both(torque) : "",
        Pattern = TighteningWords.Pattern(step) is { } pattern ? TighteningWords.WordOf(pattern) : "",
        TorqueStages = ToolList.Torque(step) is { } stages ? _tools.Torques.Stages(stages) : [],
        People = step.People,
        Store = step.Details.Store ?? "",
        Ppe = Ppe.At(step),
        Certificates = [.. CertifiedWork.NamedAt(step).Select(one => one.Title).Except(JobCertificates)],
        Place = step.Place?.Title ?? "",
        Room = step.Place?.Room ?? 0,
        Photos = step.Details.Photos,
        SeePhotos = step is { Phase: PlanPhase.Refit, Mirror: > 0 } ? [.. _steps[step.Mirror - 1].Details.Photos.Select(photo => new PlanPhoto(step.Mirror, photo))] : [],
        Return = StillOpen.TryGetValue(step.Number, out var open)
            ? new PlanReturn(new SafetyLines(_book).Return((Energy)step.Target!, !open.IsEmpty, !Temporary.IsEmpty, Energies.IsolatedBeside(step)), open)
            : null,
        Isolation = step is { Verb: Verb.Isolate, Target: Energy again } && !Energies.MadeSafe.ContainsKey(step.Number)
            ? new SafetyLines(_book).Again(again, step.EndsProved)
            : null,
        Figures = [.. Figures.At(step)],
        Marks = Marks.Made(step.Number),
        SeeMarks = Marks.Seen(step.Number),
        Ticks = [.. OwnPlaceWords.Ticks(step)],
        Notes = [.. OwnPlaceWords.Notes(step)],
        Checks = StepProse.Checks(step, Energies.MadeSafe.ContainsKey(step.Number)),
        NewParts = _renewals.NewParts(step),
        NewAt = _renewals.NewAt(step),
        NewCount = _renewals.NewCount(step),
        OldOffAt = _renewals.OldOffAt(step),
        Crowfoot = _tools.Crowfoot(step),
        StaysOnPart = StayingHardware.IsCaptive(step),
        Consumes = [.. SupplyDemand.Of(step).Where(demand => !demand.IsPiece).Select(Words)],
        Scrap = string.Join(", ", OrderList.Scrapped(step).Select(pieces => pieces.Words)),
        Reading = StepProse.Reading(step, Energies.MadeSafe.ContainsKey(step.Number)),
        Record = step.Verb == Verb.Record ? step.Text ?? "" : "",
        SeeSteps = [.. new[] { step.ProvedAt, step.OtherHalf }.Where(other => other > 0)],
        Signed = step.IsSigned,
        MakeSafe = Energies.MadeSafe.GetValueOrDefault(step.Number),
        HandOver = HandOvers.GetValueOrDefault(step.Number),
        InBackground = step.InBackground,
        WaitsFor = [.. step.WaitsFor.Where(before => _steps[before - 1].Cure is null)],
        WaitsForCureOf = [.. step.WaitsFor.Where(before => _steps[before - 1].Cure is not null)],
        Cure = Cure(step),
        Mirror = step.Mirror,
        Derived = step.Derived,
        Because = step.Because,
        Kilograms = Lift(step)?.Kilograms ?? 0,
        InPounds = Lift(step)?.IsInPounds ?? false,
        LiftLimit = Lift(step) is { IsNotable: true } lift ? Math.Round(lift.TeamLimit, lift.IsInPounds ? 3 : 1) : null,
        Lifted = Lift(step) is { IsNotable: true } half && half.Lifted < half.Kilograms ? Math.Round(half.Lifted, half.IsInPounds ? 3 : 1) : null,
        TooHeavy = Lift(step)?.IsTooHeavy ?? false,
        Hoist = Lift(step)?.Hoist ?? step.Details.Hoist,
        OffAt = Turn(step, one => one.OnAt, one => one.OffAt),
        OnSince = Turn(step, one => one.OffAt, one => one.OnAt),
        Seconds = StepTime.Of(step).Duration,
        IsUsualTime = StepTime.Of(step).IsUsual,
        Source = Place(step.Source),
    };

    /// <summary>The cure that a step starts, and what there is to do meanwhile: the next step, unless that waits for it.</summary>
    private PlanCure? Cure(PlannedStep step)
    {
        if (step.Cure is not { } cure)
        {
            return null;
        }

        var before = _awaitedBy[step.Number].ToImmutableArray();
        var meanwhile = step.Number < _steps.Length && !before.Contains(step.Number + 1) ? step.Number + 1 : 0;
        return new PlanCure(_book.Print(cure), cure.BaseValue, before, meanwhile);
    }

    /// <summary>The step that a step for something temporary is paired with; 0 where it is none.</summary>
    private int Turn(PlannedStep step, Func<PlanTemporary, ImmutableArray<int>> here, Func<PlanTemporary, ImmutableArray<int>> there) =>
        Temporary.Select(one => here(one).IndexOf(step.Number) is >= 0 and var turn ? there(one)[turn] : 0).FirstOrDefault(other => other > 0);

    private PartLift? Lift(PlannedStep step) => Lifts.GetValueOrDefault(step.Number);

    private string Words(SupplyDemand demand) =>
        _book.Say("amount.of", ("amount", ConsumableList.Words(demand.Amount, _book)), ("what", demand.Supply.Title));

    private PlanSource Place(SourceSpan source)
    {
        var (line, column) = _library.Trees[source.Path].Text.PositionAt(source.Span.Start);
        return new PlanSource(source.Path, line + 1, column + 1);
    }
}
