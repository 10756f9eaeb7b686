using System.Collections.Immutable;
using ProcScript.Analysis.Fluids;
using ProcScript.Analysis.Messages;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Plans.Steps;

/// <summary>An action of a proven procedure with its number: what the texts, the lists and the times of a plan are made from.</summary>
internal sealed record PlannedStep
{
    /// <summary>The language that it is told in.</summary>
    public Wordbook Book { get; init; } = Wordbook.English;

    /// <summary>The number; it runs through strip, work and refit.</summary>
    public required int Number { get; init; }

    /// <summary>Strip, work or refit.</summary>
    public required PlanPhase Phase { get; init; }

    /// <summary>The card, an index into the cards of the phase.</summary>
    public required int Card { get; init; }

    /// <summary>What is done.</summary>
    public required Verb Verb { get; init; }

    /// <summary>What it is done to; null where the action is a text.</summary>
    public MachineItem? Target { get; init; }

    /// <summary>How many pieces of a joint; 0 where the target is none.</summary>
    public int Count { get; init; }

    /// <summary>Whether the joint is slack once it is done: what is put on then is not tightened yet.</summary>
    public bool LeavesSlack { get; init; }

    /// <summary>Of what goes in slack: the step that gives it its torque; of that step: the one at which it went in; 0 otherwise.</summary>
    public int OtherHalf { get; init; }

    /// <summary>The position to set; -1 otherwise.</summary>
    public int Position { get; init; } = -1;

    /// <summary>Conditions written at it, or at the step that it undoes.</summary>
    public ImmutableArray<Condition> Conditions { get; init; } = [];

    /// <summary>The test that it belongs to, from 1; 0 where it belongs to none.</summary>
    public int Test { get; init; }

    /// <summary>The text of a measurement, task, check, record or pause.</summary>
    public string? Text { get; init; }

    /// <summary>What the reading must be.</summary>
    public Limit? Expect { get; init; }

    /// <summary>What the author says of it, for this direction.</summary>
    public ActionDetails Details { get; init; } = ActionDetails.None;

    /// <summary>How many people it takes.</summary>
    public int People
    {
        get => Math.Max(field, Math.Max(1, Details.People));
        init;
    }

    /// <summary>The place in which it is done; null where nothing is said of one.</summary>
    public Workplace? Place { get; init; }

    /// <summary>How long the alerts that stand here first tell people to wait, in seconds.</summary>
    public double WarnedWait { get; init; }

    /// <summary>The alerts that an author wrote for it.</summary>
    public ImmutableArray<Alert> Alerts { get; init; } = [];

    /// <summary>The alerts that an author wrote for the step that it undoes.</summary>
    public ImmutableArray<Alert> MirroredAlerts { get; init; } = [];

    /// <summary>Whether other work goes on meanwhile.</summary>
    public bool InBackground { get; init; }

    /// <summary>How long what it puts in place cures before it may be loaded; null where nothing does.</summary>
    public Quantity? Cure { get; init; }

    /// <summary>The background and curing steps that must have ended first.</summary>
    public ImmutableArray<int> WaitsFor { get; init; } = [];

    /// <summary>The steps whose effect it needs.</summary>
    public ImmutableArray<int> EnabledBy { get; init; } = [];

    /// <summary>The step of the strip that it undoes, or of the refit that undoes it; 0 where there is none.</summary>
    public int Mirror { get; init; }

    /// <summary>What becomes of what it takes off, or became of what it puts back.</summary>
    public Fate Fate { get; init; }

    /// <summary>How many of the pieces never go back, or go in as new ones, where the joint as a whole goes back.</summary>
    public int Renewed { get; init; }

    /// <summary>Whether an energy is isolated and proved to be off once it is done.</summary>
    public bool EndsProved { get; init; }

    /// <summary>The step that proves an energy to be off which is isolated here; 0 where this one does, or none.</summary>
    public int ProvedAt { get; init; }

    /// <summary>What the author lets stay open although an energy comes back.</summary>
    public ImmutableArray<OpenItem> Open { get; init; } = [];

    /// <summary>Of a part that is fitted new: what it changes about fluids; of a fluid that is filled: what changes its charge.</summary>
    public ImmutableArray<BroughtChange> Brings { get; init; } = [];

    /// <summary>What a fluid is filled to; null for other actions and where no charge is given.</summary>
    public Quantity? Charge { get; init; }

    /// <summary>Whether <c>strip</c> put it in, or the compiler did for a need of the refit.</summary>
    public bool Derived { get; init; }

    /// <summary>Why the compiler put it in.</summary>
    public string Because { get; init; } = "";

    /// <summary>Where it is written.</summary>
    public required SourceSpan Source { get; init; }

    /// <summary>The joint or cover; null where the target is none.</summary>
    public Joint? Joint => Target as Joint;

    /// <summary>The part; null where the target is none.</summary>
    public Part? Part => Target as Part;

    /// <summary>The caps that it puts on or takes off; null where it is about none.</summary>
    public CapUse? Cap => Verb is Verb.Cap or Verb.Uncap ? Target?.Cap : null;

    /// <summary>Of a joint with caps, what goes away for good on one side of it, and so gets no caps; else null.</summary>
    public Part? BareSide { get; init; }

    /// <summary>Whether it takes pieces of a joint off.</summary>
    public bool Opens => Verb is Verb.Undo or Verb.Release or Verb.Unplug or Verb.Disconnect or Verb.Cut;

    /// <summary>Whether it tightens all that is on of a joint.</summary>
    public bool Tightens => Verb is Verb.Tighten or Verb.Retorque;

    /// <summary>Whether a second person signs that it is done: by its own words, or since it closes a joint that asks for it.</summary>
    public bool IsSigned => Details.Signed || (Joint is { Signed: true } && ((Closes && !LeavesSlack) || Tightens));

    /// <summary>Whether it puts pieces of a joint on.</summary>
    public bool Closes => Verb is Verb.Fasten or Verb.Snug or Verb.Engage or Verb.Plug or Verb.Connect or Verb.Renew;
}

/// <summary>The three parts of a plan.</summary>
internal enum PlanPhase
{
    /// <summary>Taking off.</summary>
    Strip,

    /// <summary>The work between.</summary>
    Work,

    /// <summary>Putting back.</summary>
    Refit,
}

/// <summary>What becomes of what comes off.</summary>
internal enum Fate
{
    /// <summary>It goes back.</summary>
    GoesBack,

    /// <summary>A new one of the same goes back.</summary>
    Renewed,

    /// <summary>Nothing goes back.</summary>
    Discarded,
}
