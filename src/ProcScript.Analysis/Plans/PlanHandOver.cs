using System.Collections.Immutable;

namespace ProcScript.Analysis.Plans;

/// <summary>What is handed over at a pause: where the job stands, read off the run at that step.</summary>
/// <param name="Step">The step at which the job stops.</param>
/// <param name="Title">Why it stops; the author's words.</param>
/// <param name="Time">How long, in words; empty where not said.</param>
/// <param name="Done">How many steps are done.</param>
/// <param name="Of">How many there are.</param>
/// <param name="Sections">What is not as on the whole machine, sort by sort; sorts without a line are left out.</param>
/// <param name="Alerts">The cautions that hold as long as it stands like this.</param>
/// <param name="NextStep">The step to go on with; 0 where none is left.</param>
/// <param name="Next">What that step does, in words.</param>
public sealed record PlanHandOver(
    int Step,
    string Title,
    string Time,
    int Done,
    int Of,
    ImmutableArray<PlanHandOverSection> Sections,
    ImmutableArray<PlanAlert> Alerts,
    int NextStep,
    string Next);

/// <summary>One sort of thing that is handed over.</summary>
/// <param name="Sort">The sort, one word: <c>energy</c>, <c>out</c>, <c>bag</c> and so on.</param>
/// <param name="Title">What it is headed by.</param>
/// <param name="Lines">The things.</param>
public sealed record PlanHandOverSection(string Sort, string Title, ImmutableArray<PlanHandOverLine> Lines);

/// <summary>One thing that is handed over.</summary>
/// <param name="Text">What, and how it stands.</param>
/// <param name="Step">The step since which it stands so; 0 where it always has.</param>
/// <param name="Place">Where it lies, in words; empty where not said. Null for what has no place of its own.</param>
public sealed record PlanHandOverLine(string Text, int Step, string? Place);
