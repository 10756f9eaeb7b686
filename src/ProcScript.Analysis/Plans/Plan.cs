using System.Collections.Immutable;

namespace ProcScript.Analysis.Plans;

/// <summary>
/// All that a work pack says of one procedure in one variant. It is public: <c>build --format json</c> writes it, and templates
/// see nothing else. Texts marked Markdown are an author's prose; all other texts are plain. Times are in seconds.
/// </summary>
public sealed record Plan
{
    /// <summary>The version of this document's form.</summary>
    public required string Format { get; init; }

    /// <summary>The language that it is written in, but for the author's own words: a tag of BCP 47, such as <c>de</c>.</summary>
    public string Language { get; init; } = "en";

    /// <summary>
    /// The language of the author's own words, where the plan is in another and they are translated; else empty. What has no translation stands
    /// between U+2068 and U+2069.
    /// </summary>
    public string TextsLanguage { get; init; } = "";

    /// <summary>The job: the procedure's name with its arguments, usable as a file name, such as <c>door_out-left</c>.</summary>
    public required string Job { get; init; }

    /// <summary>The procedure's name.</summary>
    public string Procedure { get; init; } = "";

    /// <summary>Its parameters with their values.</summary>
    public ImmutableArray<PlanParameter> Parameters { get; init; } = [];

    /// <summary>The procedure's title.</summary>
    public required string Title { get; init; }

    /// <summary>The machine's name.</summary>
    public required string Machine { get; init; }

    /// <summary>The machine's title.</summary>
    public required string MachineTitle { get; init; }

    /// <summary>The options of the machine, and whether this plan has them.</summary>
    public required ImmutableArray<PlanOption> Variant { get; init; }

    /// <summary>
    /// The first characters of a hash over all else that the plan says, but for the places in the sources: an unchanged pack keeps it whatever
    /// becomes of the texts around it. Of the open questions of a draft the places are printed, and count.
    /// </summary>
    public required string Revision { get; init; }

    /// <summary>
    /// The questions of a draft that are still open in what the plan is made from. As long as there are any, nobody may work from it, and every
    /// card says so.
    /// </summary>
    public ImmutableArray<PlanQuestion> Questions { get; init; } = [];

    /// <summary>The goals in words.</summary>
    public required ImmutableArray<string> Goals { get; init; }

    /// <summary>The goals as actions.</summary>
    public ImmutableArray<PlanAction> GoalActions { get; init; } = [];

    /// <summary>Alerts for the whole job.</summary>
    public required ImmutableArray<PlanAlert> Alerts { get; init; }

    /// <summary>How many people the job needs at the most at once.</summary>
    public required int People { get; init; }

    /// <summary>The steps that take more than one person.</summary>
    public ImmutableArray<int> SharedSteps { get; init; } = [];

    /// <summary>The estimated times.</summary>
    public required PlanTimes Times { get; init; }

    /// <summary>The heaviest part that is lifted, or null.</summary>
    public required PlanLift? HeaviestLift { get; init; }

    /// <summary>Tools in order of first use.</summary>
    public required ImmutableArray<PlanTool> Tools { get; init; }

    /// <summary>How often tools change.</summary>
    public required PlanToolChanges ToolChanges { get; init; }

    /// <summary>What has to be at hand before the start: single-use, replaced, spares.</summary>
    public required ImmutableArray<PlanOrderLine> Orders { get; init; }

    /// <summary>What is used up by amount.</summary>
    public required ImmutableArray<PlanConsumable> Consumables { get; init; }

    /// <summary>Protective equipment, for the whole job and for single steps.</summary>
    public required ImmutableArray<string> Ppe { get; init; }

    /// <summary>The part of it that is worn on the whole job.</summary>
    public ImmutableArray<string> JobPpe { get; init; } = [];

    /// <summary>What somebody must hold for it, in the order in which steps ask for it.</summary>
    public ImmutableArray<PlanCertificate> Certificates { get; init; } = [];

    /// <summary>What of that is asked for on the whole job.</summary>
    public ImmutableArray<string> JobCertificates { get; init; } = [];

    /// <summary>The places in which only so many people work at once, in the order in which steps are done there.</summary>
    public ImmutableArray<PlanPlace> Places { get; init; } = [];

    /// <summary>The hazards that the job touches, in the order they are met.</summary>
    public ImmutableArray<PlanHazard> Hazards { get; init; } = [];

    /// <summary>Work that most countries leave to licensed people, as far as it is found: <c>refrigerant</c>, <c>restraint</c>, <c>high voltage</c>.</summary>
    public ImmutableArray<string> Licensed { get; init; } = [];

    /// <summary>The energies that the job isolates, in that order.</summary>
    public required ImmutableArray<PlanEnergy> Energies { get; init; }

    /// <summary>The fluids that the job empties.</summary>
    public required ImmutableArray<PlanFluid> Fluids { get; init; }

    /// <summary>The controls that the job moves.</summary>
    public required ImmutableArray<PlanControl> Controls { get; init; }

    /// <summary>The strip, stage by stage.</summary>
    public required ImmutableArray<PlanStage> Strip { get; init; }

    /// <summary>The work between strip and refit; its steps carry on the strip's numbers.</summary>
    public required PlanStage Work { get; init; }

    /// <summary>The refit, in cards that follow the stages backwards; steps carry on the numbers.</summary>
    public required ImmutableArray<PlanStage> Refit { get; init; }

    /// <summary>The items that it is about, and those that they hang together with.</summary>
    public ImmutableArray<PlanItem> Items { get; init; } = [];

    /// <summary>The orders that the author asks of the refit.</summary>
    public ImmutableArray<PlanRule> Rules { get; init; } = [];

    /// <summary>The bags.</summary>
    public required ImmutableArray<PlanBag> Bags { get; init; }

    /// <summary>The hardware that comes off, goes back and lies in no bag, since it stays on its part.</summary>
    public ImmutableArray<PlanStaying> Staying { get; init; } = [];

    /// <summary>What is on the machine for the job alone: temporary parts in the order in which they first go on, then caps.</summary>
    public ImmutableArray<PlanTemporary> Temporary { get; init; } = [];

    /// <summary>What is not put back, and why.</summary>
    public required ImmutableArray<PlanDiscard> Discards { get; init; }

    /// <summary>What is due once the job is over.</summary>
    public ImmutableArray<PlanFollowUp> FollowUps { get; init; } = [];

    /// <summary>What hides what, and the order it comes off.</summary>
    public required PlanMap Map { get; init; }

    /// <summary>The source files, relative to the library root.</summary>
    public required ImmutableArray<string> Sources { get; init; }
}

/// <summary>An option of the machine.</summary>
/// <param name="Name">The name.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Present">Whether the plan's machine has it.</param>
public sealed record PlanOption(string Name, string Title, bool Present);

/// <summary>An alert.</summary>
/// <param name="Word"><c>danger</c>, <c>warning</c>, <c>caution</c> or <c>notice</c>.</param>
/// <param name="Text">Markdown.</param>
public sealed record PlanAlert(string Word, string Text)
{
    /// <summary>Whether it is the usual caution for a hazard mark, and no author's.</summary>
    public bool IsUsual { get; init; }
}

/// <summary>Estimated times in seconds. Bench figures in reach of the hand: the real job takes longer.</summary>
/// <param name="Strip">The strip, one person.</param>
/// <param name="Work">The work, one person.</param>
/// <param name="Refit">The refit, one person.</param>
/// <param name="OnePerson">The whole job, one step after the other: for one person, with helpers where a step needs them.</param>
/// <param name="Crew">The whole job for two, or for as many as one step takes; never more than one step after the other.</param>
/// <param name="Given">How much of the time of one person is the author's figures.</param>
/// <param name="Usual">How much of it is usual bench times, for the author gives none.</param>
/// <param name="Waiting">How much of it there is nothing to do but wait.</param>
public sealed record PlanTimes(double Strip, double Work, double Refit, double OnePerson, double Crew, double Given, double Usual, double Waiting)
{
    /// <summary>How many people the crew is: two, or as many as one step takes.</summary>
    public int CrewSize { get; init; } = 2;
}

/// <summary>How often tools are laid down to take up others, one person working in the order of the cards.</summary>
/// <param name="Strip">In the strip.</param>
/// <param name="Work">In the work.</param>
/// <param name="Refit">In the refit.</param>
/// <param name="Seconds">About how long they all take: 4 s each, common practice; not part of the times.</param>
public sealed record PlanToolChanges(int Strip, int Work, int Refit, double Seconds);

/// <summary>A part that is lifted.</summary>
/// <param name="Part">Its title.</param>
/// <param name="Kilograms">Its mass as removed, with what is still inside.</param>
/// <param name="Step">The step.</param>
/// <param name="People">How many people the step has.</param>
public sealed record PlanLift(string Part, double Kilograms, int Step, int People)
{
    /// <summary>Whether a hoist lifts it.</summary>
    public bool Hoist { get; init; }

    /// <summary>Whether people are told it in pounds first, as the author writes it.</summary>
    public bool InPounds { get; init; }
}
