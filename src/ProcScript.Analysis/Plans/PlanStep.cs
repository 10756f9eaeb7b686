using System.Collections.Immutable;
using ProcScript.Analysis.Machines.Documents;

namespace ProcScript.Analysis.Plans;

/// <summary>One numbered line of a card.</summary>
public sealed record PlanStep
{
    /// <summary>The number; it runs through strip, work and refit.</summary>
    public required int Number { get; init; }

    /// <summary>The verb's word in the language, such as <c>undo</c>.</summary>
    public required string Verb { get; init; }

    /// <summary>
    /// What to do, in plain imperative words with quantity and size, such as <c>Undo 4 × M10 × 30 bolt</c>; the author's own for a task,
    /// and after <c>Check:</c> for a check.
    /// </summary>
    public required string Text { get; init; }

    /// <summary>The item's name in the sources; empty where there is none.</summary>
    public string Item { get; init; } = "";

    /// <summary>The item's title; empty where there is none.</summary>
    public string ItemTitle { get; init; } = "";

    /// <summary>
    /// Where a joint is: the part it belongs to and the author's words, of a cover those of the joint under it; the part at its other end too,
    /// where the step would read like another without; else empty.
    /// </summary>
    public string Where { get; init; } = "";

    /// <summary>How many pieces; 0 where it is not counted.</summary>
    public int Count { get; init; }

    /// <summary>Of a control, the position that it sets, as in the sources; else empty.</summary>
    public string Position { get; init; } = "";

    /// <summary>What must be true for this step, as is written at it; it binds with what the machine asks for.</summary>
    public ImmutableArray<ConditionDocument> Needs { get; init; } = [];

    /// <summary>The items that may be open although it brings an energy back.</summary>
    public ImmutableArray<string> Open { get; init; } = [];

    /// <summary>The test that it belongs to, counted from 1 in the order of the plan; 0 where it belongs to none.</summary>
    public int Test { get; init; }

    /// <summary>How many of the pieces never go back (strip) or go in as new ones (refit), where the others go back; 0 where all are alike.</summary>
    public int Renewed { get; init; }

    /// <summary>How it is done: the release or engage text, then the author's; Markdown each.</summary>
    public ImmutableArray<string> How { get; init; } = [];

    /// <summary>Alerts before it.</summary>
    public ImmutableArray<PlanAlert> Alerts { get; init; } = [];

    /// <summary>The titles of the tools.</summary>
    public ImmutableArray<string> Tools { get; init; } = [];

    /// <summary>The bags it fills (strip) or empties (refit).</summary>
    public ImmutableArray<int> Bags { get; init; } = [];

    /// <summary>The bags that are empty once it is done (refit).</summary>
    public ImmutableArray<int> EmptiesBags { get; init; } = [];

    /// <summary>Which piece it is about, where others that come off or go back on the same card fit the same holes; else null.</summary>
    public PlanWhich? Which { get; init; }

    /// <summary>Which way to turn it, where its thread is left-handed: <c>Left-hand thread: undo clockwise.</c>; empty for all others.</summary>
    public string Turn { get; init; } = "";

    /// <summary>The torque in words, in two units, the author's first unless the shop has chosen one; empty where there is none.</summary>
    public string Torque { get; init; } = "";

    /// <summary>
    /// The order in which its pieces are tightened: <c>star</c>, <c>inside out</c> or <c>listed</c>; empty where it tightens nothing, one piece, or in
    /// any order.
    /// </summary>
    public string Pattern { get; init; } = "";

    /// <summary>The stages of the torque, each as its wrench is set; none where there is no torque.</summary>
    public ImmutableArray<PlanTorque> TorqueStages { get; init; } = [];

    /// <summary>The crowfoot between torque wrench and nut; empty where none is needed.</summary>
    public string Crowfoot { get; init; } = "";

    /// <summary>Whether what comes off is hardware that stays on its part, and so goes into no bag.</summary>
    public bool StaysOnPart { get; init; }

    /// <summary>How many people; 1 unless said.</summary>
    public int People { get; init; } = 1;

    /// <summary>Where the part is put; empty where not said.</summary>
    public string Store { get; init; } = "";

    /// <summary>Protective equipment for this step, beside that for the whole job.</summary>
    public ImmutableArray<string> Ppe { get; init; } = [];

    /// <summary>What to photograph before it is started.</summary>
    public ImmutableArray<string> Photos { get; init; } = [];

    /// <summary>The photos that were taken before the step that this one undoes.</summary>
    public ImmutableArray<PlanPhoto> SeePhotos { get; init; } = [];

    /// <summary>The pictures to look at.</summary>
    public ImmutableArray<PlanFigure> Figures { get; init; } = [];

    /// <summary>The marks to make before it is started, since it is the first that moves what they stand on.</summary>
    public ImmutableArray<string> Marks { get; init; } = [];

    /// <summary>The marks that line up again once it is done.</summary>
    public ImmutableArray<PlanMark> SeeMarks { get; init; } = [];

    /// <summary>What to see to beside it, a line with a tick each: what is kept in order, and what goes back where it was.</summary>
    public ImmutableArray<string> Ticks { get; init; } = [];

    /// <summary>What to write down at it beside the reading.</summary>
    public ImmutableArray<PlanReading> Notes { get; init; } = [];

    /// <summary>What is worked down before it, where it brings an energy back; else null.</summary>
    public PlanReturn? Return { get; init; }

    /// <summary>What is worked down before it, where it isolates an energy whose lines on the make-safe card are filled in already; else null.</summary>
    public PlanIsolation? Isolation { get; init; }

    /// <summary>What to check once it is done; Markdown each.</summary>
    public ImmutableArray<string> Checks { get; init; } = [];

    /// <summary>New parts that go in here.</summary>
    public ImmutableArray<PlanNewPart> NewParts { get; init; } = [];

    /// <summary>
    /// Of a step that scraps something, and of a <c>replace</c>: the steps at which new ones go in for it; none where nothing does.
    /// </summary>
    public ImmutableArray<int> NewAt { get; init; } = [];

    /// <summary>How many pieces go in there.</summary>
    public int NewCount { get; init; }

    /// <summary>Of a <c>replace</c>: the steps at which the old came off.</summary>
    public ImmutableArray<int> OldOffAt { get; init; } = [];

    /// <summary>What is consumed, in words.</summary>
    public ImmutableArray<string> Consumes { get; init; } = [];

    /// <summary>What comes off and never goes back, in words; empty where nothing does.</summary>
    public string Scrap { get; init; } = "";

    /// <summary>A reading to write down, or null.</summary>
    public PlanReading? Reading { get; init; }

    /// <summary>What is to be written down in words; empty where nothing is.</summary>
    public string Record { get; init; } = "";

    /// <summary>The other steps that the words on how it is done name: the one that proves what it isolates to be off, the other half of its tightening.</summary>
    public ImmutableArray<int> SeeSteps { get; init; } = [];

    /// <summary>Whether a second person signs that it is done.</summary>
    public bool Signed { get; init; }

    /// <summary>
    /// Where it isolates an energy for the first time, or proves that it is off then: the place of the energy in the plan's list, from 1. The lines
    /// of making it safe, its locks and its reading stand there and not at the step. 0 for all others.
    /// </summary>
    public int MakeSafe { get; init; }

    /// <summary>What is handed over where the job stops; else null.</summary>
    public PlanHandOver? HandOver { get; init; }

    /// <summary>Whether other work goes on meanwhile.</summary>
    public bool InBackground { get; init; }

    /// <summary>The background steps that must have ended first.</summary>
    public ImmutableArray<int> WaitsFor { get; init; } = [];

    /// <summary>The steps whose work must have cured first.</summary>
    public ImmutableArray<int> WaitsForCureOf { get; init; } = [];

    /// <summary>What cures from here on, or null.</summary>
    public PlanCure? Cure { get; init; }

    /// <summary>The step that it undoes (refit) or that undoes it (strip); 0 where there is none.</summary>
    public int Mirror { get; init; }

    /// <summary>Whether <c>strip</c> put it in, or the compiler did for a need of the refit.</summary>
    public bool Derived { get; init; }

    /// <summary>What the compiler put it in for, as the rest of a sentence: <c>to fit the pump</c>; empty for the author's own steps.</summary>
    public string Because { get; init; } = "";

    /// <summary>The mass lifted, in kilograms; 0 where none is.</summary>
    public double Kilograms { get; init; }

    /// <summary>Whether people are told it in pounds first, as the author writes it, and the limit with it.</summary>
    public bool InPounds { get; init; }

    /// <summary>
    /// What those who lift may lift there together, in kilograms: for one person by the revised NIOSH lifting equation, for more a share of the sum. Null
    /// where a hoist lifts, and where the mass is within what one may lift and the author says nothing of how it is lifted.
    /// </summary>
    public double? LiftLimit { get; init; }

    /// <summary>How much of the mass hands lift, in kilograms, where a limit is told and the rest stays on a hinge or on its other end; else null.</summary>
    public double? Lifted { get; init; }

    /// <summary>Whether what hands lift is more than the limit.</summary>
    public bool TooHeavy { get; init; }

    /// <summary>Whether a hoist lifts it.</summary>
    public bool Hoist { get; init; }

    /// <summary>The time in seconds until its effect is there; what runs in the background holds its people for less.</summary>
    public double Seconds { get; init; }

    /// <summary>Whether the time is a usual one, for the author gives none.</summary>
    public bool IsUsualTime { get; init; }

    /// <summary>Where something goes on for the job alone, the step at which it comes off again; else 0.</summary>
    public int OffAt { get; init; }

    /// <summary>Where something comes off that was on for the job alone, the step at which it went on; else 0.</summary>
    public int OnSince { get; init; }

    /// <summary>Whether it was done before the plan was made, which takes up a job that is under way.</summary>
    public bool IsDone { get; init; }

    /// <summary>The source: path, line and column, counted from 1.</summary>
    public required PlanSource Source { get; init; }
}

/// <summary>A photo that was taken.</summary>
/// <param name="Step">The step before which it was taken.</param>
/// <param name="Text">What it shows.</param>
public sealed record PlanPhoto(int Step, string Text);

/// <summary>A mark that was made before things came apart.</summary>
/// <param name="Step">The step before which it was made.</param>
/// <param name="Text">What it is.</param>
/// <param name="IsOnNewPart">Whether the part is a new one, which bears no mark yet.</param>
public sealed record PlanMark(int Step, string Text, bool IsOnNewPart);

/// <summary>A bond, a sealant or the like that cures.</summary>
/// <param name="Time">How long, in words.</param>
/// <param name="Seconds">How long.</param>
/// <param name="Before">The steps that would load it and wait; where there is none, the end of the job waits.</param>
/// <param name="Meanwhile">The step to go on with; 0 where nothing is left to do.</param>
public sealed record PlanCure(string Time, double Seconds, ImmutableArray<int> Before, int Meanwhile);

/// <summary>A reading to write down.</summary>
/// <param name="Text">What is read.</param>
/// <param name="Limits">What it must be, in words; empty where not said.</param>
public sealed record PlanReading(string Text, string Limits);

/// <summary>A place in the sources.</summary>
/// <param name="Path">The file, relative to the library root.</param>
/// <param name="Line">The line, counted from 1.</param>
/// <param name="Column">The column, counted from 1.</param>
public sealed record PlanSource(string Path, int Line, int Column);
