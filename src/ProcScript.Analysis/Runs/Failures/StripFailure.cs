using System.Collections.Immutable;
using ProcScript.Analysis.Needs;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Runs.Failures;

/// <summary>Something in the strip that cannot be done as written: the facts; the rule of that name makes a finding of it.</summary>
/// <param name="Step">The step.</param>
public abstract record StripFailure(Step Step);

/// <summary>A part is taken out while joints tie it to the rest.</summary>
/// <param name="Step">The step.</param>
/// <param name="Part">The part.</param>
/// <param name="Ties">The joints, each with how many are attached.</param>
public sealed record StillHeld(Step Step, Part Part, ImmutableArray<HeldJoint> Ties) : StripFailure(Step);

/// <summary>A part goes aside while joints that its way aside names are tight.</summary>
/// <param name="Step">The step.</param>
/// <param name="Part">The part.</param>
/// <param name="Ties">The joints, each with how many are attached.</param>
public sealed record StillTight(Step Step, Part Part, ImmutableArray<HeldJoint> Ties) : StripFailure(Step);

/// <summary>Covers are still on a joint.</summary>
/// <param name="Step">The step.</param>
/// <param name="Joint">The joint.</param>
/// <param name="Covers">The covers, each with how many are attached.</param>
public sealed record StillCovered(Step Step, Joint Joint, ImmutableArray<HeldJoint> Covers) : StripFailure(Step);

/// <summary>Parts are in the way.</summary>
/// <param name="Step">The step.</param>
/// <param name="Target">What nobody can get at.</param>
/// <param name="Parts">The parts, as the conditions name them.</param>
public sealed record InTheWay(Step Step, MachineItem Target, ImmutableArray<PartOutOfTheWay> Parts) : StripFailure(Step)
{
    /// <summary>Choices of parts of which none is out of the way.</summary>
    public ImmutableArray<AnyOf> Choices { get; init; } = [];
}

/// <summary>A joint's energy is live.</summary>
/// <param name="Step">The step.</param>
/// <param name="Joint">The joint.</param>
/// <param name="Energy">The energy.</param>
public sealed record StillLive(Step Step, Joint Joint, Energy Energy) : StripFailure(Step);

/// <summary>A hand goes to a joint whose energy is isolated, and nobody has proved yet that it is off.</summary>
/// <param name="Step">The step.</param>
/// <param name="Target">The joint.</param>
/// <param name="Energy">The energy.</param>
/// <param name="Isolated">The step that isolated it; null where none did.</param>
public sealed record NotProved(Step Step, MachineItem Target, Energy Energy, Step? Isolated) : StripFailure(Step)
{
    /// <summary>What kept people from the place of the proof when it was isolated.</summary>
    public ImmutableArray<Need> LackedThen { get; init; } = [];

    /// <summary>What keeps them from it now; nothing where it could be proved right before the step.</summary>
    public ImmutableArray<Need> LackingNow { get; init; } = [];
}

/// <summary>An energy is isolated where nobody can prove that it is off, and no later step does.</summary>
/// <param name="Step">The step that isolates it.</param>
/// <param name="Energy">The energy.</param>
/// <param name="Lacking">What keeps people from the place.</param>
public sealed record NeverProved(Step Step, Energy Energy, ImmutableArray<Need> Lacking) : StripFailure(Step);

/// <summary>A joint's fluid is in.</summary>
/// <param name="Step">The step.</param>
/// <param name="Joint">The joint.</param>
/// <param name="Fluid">The fluid.</param>
public sealed record StillFull(Step Step, Joint Joint, Fluid Fluid) : StripFailure(Step);

/// <summary>An energy is needed live and was isolated.</summary>
/// <param name="Step">The step.</param>
/// <param name="Target">What needs it; null where a measurement, a task or a check does.</param>
/// <param name="Need">The need.</param>
/// <param name="Isolated">The step that isolated it.</param>
public sealed record IsolatedBefore(Step Step, MachineItem? Target, EnergyLive Need, Step Isolated) : StripFailure(Step);

/// <summary>Conditions that the machine or the step states do not hold.</summary>
/// <param name="Step">The step.</param>
/// <param name="Target">What has them; null for a measurement, a task or a check.</param>
/// <param name="Conditions">The conditions.</param>
public sealed record ConditionFails(Step Step, MachineItem? Target, ImmutableArray<Need> Conditions) : StripFailure(Step);

/// <summary>Nothing is left to do.</summary>
/// <param name="Step">The step.</param>
/// <param name="Target">The target.</param>
/// <param name="Earlier">The step that did it; null where the machine comes in so.</param>
public sealed record AlreadyDone(Step Step, MachineItem Target, Step? Earlier) : StripFailure(Step)
{
    /// <summary>The call whose steps these are, where a call brings them.</summary>
    public RepeatedCall? Call { get; init; }
}

/// <summary>A call that comes to steps which have nothing left to do.</summary>
/// <param name="Call">Where it is written.</param>
/// <param name="Outer">The calls that lead to it, outermost first.</param>
/// <param name="Earlier">An earlier call of the same procedure that has done it; null where the work was done otherwise.</param>
/// <param name="Steps">The steps that have nothing left to do.</param>
/// <param name="Count">How many steps it brings.</param>
public sealed record RepeatedCall(SourceSpan Call, ImmutableArray<SourceSpan> Outer, SourceSpan? Earlier, ImmutableArray<AlreadyDone> Steps, int Count);

/// <summary>More pieces are to come off than are attached.</summary>
/// <param name="Step">The step.</param>
/// <param name="Joint">The joint.</param>
/// <param name="Asked">How many are to come off.</param>
/// <param name="Attached">How many are attached.</param>
public sealed record TooFewLeft(Step Step, Joint Joint, int Asked, int Attached) : StripFailure(Step);

/// <summary>More pieces of a joint are to be replaced than are off.</summary>
/// <param name="Step">The step.</param>
/// <param name="Joint">The joint.</param>
/// <param name="Asked">How many are to be replaced.</param>
/// <param name="Off">How many are off.</param>
/// <param name="Renewed">How many of these an earlier step has replaced.</param>
public sealed record TooFewOff(Step Step, Joint Joint, int Asked, int Off, int Renewed) : StripFailure(Step);

/// <summary>The verb is not for things of this sort.</summary>
/// <param name="Step">The step.</param>
/// <param name="Target">The target.</param>
public sealed record VerbDoesNotFit(Step Step, MachineItem Target) : StripFailure(Step);

/// <summary>A refit verb stands in a stage or in the work.</summary>
/// <param name="Step">The step.</param>
/// <param name="Target">The target.</param>
public sealed record VerbOfTheRefit(Step Step, MachineItem Target) : StripFailure(Step);

/// <summary>The part has no way aside.</summary>
/// <param name="Step">The step.</param>
/// <param name="Part">The part.</param>
public sealed record NoWayAside(Step Step, Part Part) : StripFailure(Step);

/// <summary>The action cannot go on in the background.</summary>
/// <param name="Step">The step.</param>
public sealed record NotInBackground(Step Step) : StripFailure(Step);

/// <summary>Something is replaced or discarded that has not come off.</summary>
/// <param name="Step">The step.</param>
/// <param name="Target">The target.</param>
public sealed record NotOff(Step Step, MachineItem Target) : StripFailure(Step);

/// <summary>A joint of a temporary part is closed before what it ties is there.</summary>
/// <param name="Step">The step.</param>
/// <param name="Joint">The joint.</param>
/// <param name="Lacking">What is not so.</param>
public sealed record ClosedTooEarly(Step Step, Joint Joint, ImmutableArray<Need> Lacking) : StripFailure(Step);

/// <summary>A part is replaced or discarded with something temporary on it.</summary>
/// <param name="Step">The step.</param>
/// <param name="Part">The part.</param>
/// <param name="Temporary">What is on it.</param>
public sealed record TemporaryGoesAlong(Step Step, Part Part, ImmutableArray<Part> Temporary) : StripFailure(Step);

/// <summary>Nobody can get at what is to be worked on.</summary>
/// <param name="Step">The step.</param>
/// <param name="Target">What is to be worked on.</param>
/// <param name="Lacking">What is not so.</param>
public sealed record WorkNotReached(Step Step, MachineItem Target, ImmutableArray<Need> Lacking) : StripFailure(Step);

/// <summary>A <c>strip</c> finds no order in which the part comes out.</summary>
/// <param name="Step">The step.</param>
/// <param name="Part">The part.</param>
/// <param name="Lacking">What could not be had; null where two needs contradict each other.</param>
/// <param name="Of">The action that needs it.</param>
public sealed record NoWayOut(Step Step, Part Part, Need? Lacking, NamedAction Of) : StripFailure(Step);


/// <summary>A joint or cover that still holds.</summary>
/// <param name="Joint">The joint or cover.</param>
/// <param name="Attached">How many are attached.</param>
public readonly record struct HeldJoint(Joint Joint, int Attached);
