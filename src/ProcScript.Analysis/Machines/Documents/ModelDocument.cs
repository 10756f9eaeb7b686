using System.Collections.Immutable;

namespace ProcScript.Analysis.Machines.Documents;

/// <summary>
/// The machines of a library as data, for a program that wants to check a plan by itself: what is there, what ties it, what hides it, what can
/// hurt, and how it stands at the start. <c>model</c> writes it.
/// </summary>
/// <param name="Format">The version of this document's form.</param>
/// <param name="Machines">The machines, each in every variant that a procedure or its own check needs; a plan is about one of them.</param>
public sealed record ModelDocument(string Format, ImmutableArray<MachineDocument> Machines);

/// <summary>A machine in one variant. Names are unique in it, over all sorts of items.</summary>
public sealed record MachineDocument
{
    /// <summary>The name.</summary>
    public required string Name { get; init; }

    /// <summary>What people call it.</summary>
    public required string Title { get; init; }

    /// <summary>The names of all options that it may have.</summary>
    public required ImmutableArray<string> Options { get; init; }

    /// <summary>The names of the options that this variant has.</summary>
    public required ImmutableArray<string> With { get; init; }

    /// <summary>The kinds that its joints are of.</summary>
    public required ImmutableArray<KindDocument> Kinds { get; init; }

    /// <summary>The places at it in which only so many people work at once.</summary>
    public required ImmutableArray<PlaceDocument> Places { get; init; }

    /// <summary>What its items ask somebody to hold who works on them.</summary>
    public required ImmutableArray<CertificateDocument> Certificates { get; init; }

    /// <summary>The parts, parents before what is inside them.</summary>
    public required ImmutableArray<PartDocument> Parts { get; init; }

    /// <summary>The joints and covers.</summary>
    public required ImmutableArray<JointDocument> Joints { get; init; }

    /// <summary>The energies.</summary>
    public required ImmutableArray<EnergyDocument> Energies { get; init; }

    /// <summary>The fluids.</summary>
    public required ImmutableArray<FluidDocument> Fluids { get; init; }

    /// <summary>The controls.</summary>
    public required ImmutableArray<ControlDocument> Controls { get; init; }
}

/// <summary>A place at a machine in which only so many people work at once.</summary>
/// <param name="Name">The name.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Room">How many people work in it at once.</param>
public sealed record PlaceDocument(string Name, string Title, int Room);

/// <summary>What somebody holds who may do certain work.</summary>
/// <param name="Name">The name.</param>
/// <param name="Title">What people call it.</param>
public sealed record CertificateDocument(string Name, string Title);

/// <summary>Something that must be true to get at an item, or to do a step.</summary>
/// <param name="Phase">When it binds: <c>strip</c>, <c>refit</c> or <c>both</c>.</param>
/// <param name="Any">The alternatives: one of them has to be so.</param>
public sealed record ConditionDocument(string Phase, ImmutableArray<StateDocument> Any);

/// <summary>An item in a state.</summary>
/// <param name="Item">The item's name.</param>
/// <param name="State">
/// Of a part <c>away</c> (out or aside), <c>out</c>, <c>fitted</c>, <c>aside</c> or <c>supported</c>; of a joint or cover <c>off</c> or <c>slack</c>
/// (slack or off); of an energy <c>live</c> or <c>isolated</c>; of a fluid <c>full</c> or <c>empty</c>; of a control <c>at</c>.
/// </param>
/// <param name="Position">The position of a control; else empty.</param>
public sealed record StateDocument(string Item, string State, string Position);

/// <summary>A picture.</summary>
/// <param name="File">The file, relative to the library root.</param>
/// <param name="Caption">What it shows.</param>
/// <param name="Phase">When it is shown: <c>strip</c>, <c>refit</c> or <c>both</c>.</param>
public sealed record FigureDocument(string File, string Caption, string Phase);

/// <summary>A kind of joint.</summary>
/// <param name="Name">The name.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Sort"><c>fastener</c>, <c>clip</c>, <c>connector</c>, <c>line</c> or <c>bond</c>.</param>
/// <param name="SingleUse">Whether it never serves twice.</param>
/// <param name="Captive">Whether it stays on its part.</param>
/// <param name="Thread">The thread, as written; empty where there is none.</param>
/// <param name="Grade">The property class or grade, as written; empty where there is none.</param>
public sealed record KindDocument(string Name, string Title, string Sort, bool SingleUse, bool Captive, string Thread, string Grade);

/// <summary>A part.</summary>
public sealed record PartDocument
{
    /// <summary>The name.</summary>
    public required string Name { get; init; }

    /// <summary>What people call it.</summary>
    public required string Title { get; init; }

    /// <summary>The part that it lies in and travels with; empty for the frame.</summary>
    public required string Parent { get; init; }

    /// <summary>Its own mass in kilograms, without parts inside it that have one of their own; null where it is not said.</summary>
    public required double? Kilograms { get; init; }

    /// <summary>Whether it must not go back once it is off.</summary>
    public required bool SingleUse { get; init; }

    /// <summary>What it can do to people.</summary>
    public required ImmutableArray<string> Hazards { get; init; }

    /// <summary>What must be true to get at it, written at the part itself.</summary>
    public required ImmutableArray<ConditionDocument> Needs { get; init; }

    /// <summary>What binds its own way out and back beside that, and nothing that lies in it.</summary>
    public required ImmutableArray<ConditionDocument> WayOut { get; init; }

    /// <summary>How it goes out of the way without coming off; null where it cannot.</summary>
    public required AsideDocument? Aside { get; init; }

    /// <summary>What disturbs it: once one of these comes off, it must be renewed.</summary>
    public required ImmutableArray<string> RenewWith { get; init; }

    /// <summary>The pictures of it.</summary>
    public required ImmutableArray<FigureDocument> Figures { get; init; }

    /// <summary>The place in which one works on it, its own or that of the part around it; empty where nobody has to be in one.</summary>
    public required string Place { get; init; }

    /// <summary>What somebody must hold who works on it.</summary>
    public required ImmutableArray<string> Certificates { get; init; }

    /// <summary>Whether it is there for the job alone.</summary>
    public required bool Temporary { get; init; }

    /// <summary>How many caps the hole that it leaves takes; 0 where it takes none.</summary>
    public required int Caps { get; init; }

    /// <summary>Where it is at the start, and has to be at the end: <c>fitted</c>; <c>out</c> where it is temporary.</summary>
    public required string Start { get; init; }
}

/// <summary>How a part goes out of the way without coming off.</summary>
/// <param name="How">In words; empty where not said.</param>
/// <param name="Joints">The joints that have to be slack or off.</param>
/// <param name="Needs">What else must be true.</param>
public sealed record AsideDocument(string How, ImmutableArray<string> Joints, ImmutableArray<ConditionDocument> Needs);

/// <summary>A joint, or a cover over one.</summary>
public sealed record JointDocument
{
    /// <summary>The name.</summary>
    public required string Name { get; init; }

    /// <summary>What people call it.</summary>
    public required string Title { get; init; }

    /// <summary><c>held</c>, <c>wired</c>, <c>piped</c> or <c>cover</c>.</summary>
    public required string Role { get; init; }

    /// <summary>How many pieces it has.</summary>
    public required int Count { get; init; }

    /// <summary>The name of its kind.</summary>
    public required string Kind { get; init; }

    /// <summary>One end: the part in whose block it stands; of a cover, the part of the joint that it covers.</summary>
    public required string Part { get; init; }

    /// <summary>The other end; empty for the frame, and for a cover, which ties nothing.</summary>
    public required string To { get; init; }

    /// <summary>Of a cover, the joint or cover that it hides or locks; else empty.</summary>
    public required string Covers { get; init; }

    /// <summary>Whether it is a cover that locks the joint, as a split pin does, and does not hide it.</summary>
    public required bool IsLock { get; init; }

    /// <summary>Whether new ones go back, by its own words, its kind's, or as locks and stretch bolts do.</summary>
    public required bool SingleUse { get; init; }

    /// <summary>The energy that has to be isolated to work on it; empty where there is none.</summary>
    public required string On { get; init; }

    /// <summary>The fluid that has to be out to work on it; empty where there is none.</summary>
    public required string Carries { get; init; }

    /// <summary>Where it is, in words; empty where not said.</summary>
    public required string At { get; init; }

    /// <summary>The tightening torque, in words; empty where there is none.</summary>
    public required string Torque { get; init; }

    /// <summary>What it can do to people, its kind's too.</summary>
    public required ImmutableArray<string> Hazards { get; init; }

    /// <summary>What must be true to get at it, written at the joint itself.</summary>
    public required ImmutableArray<ConditionDocument> Needs { get; init; }

    /// <summary>What disturbs it: once one of these comes off, it must be renewed.</summary>
    public required ImmutableArray<string> RenewWith { get; init; }

    /// <summary>The pictures of it.</summary>
    public required ImmutableArray<FigureDocument> Figures { get; init; }

    /// <summary>The place in which one works on it, its own or that of the part around it; empty where nobody has to be in one.</summary>
    public required string Place { get; init; }

    /// <summary>What somebody must hold who works on it.</summary>
    public required ImmutableArray<string> Certificates { get; init; }

    /// <summary>Whether a second person signs that it is closed.</summary>
    public required bool Signed { get; init; }

    /// <summary>Whether it ties a temporary part, or covers such a joint.</summary>
    public required bool Temporary { get; init; }

    /// <summary>How many caps one piece takes while it is off; 0 where it takes none. An end on what goes away for good gets none of its half.</summary>
    public required int Caps { get; init; }

    /// <summary>How many pieces are attached at the start, and have to be at the end; none is slack then.</summary>
    public required int Start { get; init; }
}

/// <summary>An energy.</summary>
public sealed record EnergyDocument
{
    /// <summary>The name.</summary>
    public required string Name { get; init; }

    /// <summary>What people call it.</summary>
    public required string Title { get; init; }

    /// <summary>The energies that are isolated before it and come back after it; <see cref="Needs"/> says the same as conditions.</summary>
    public required ImmutableArray<string> After { get; init; }

    /// <summary>The nominal voltage in volts; null where it is not said.</summary>
    public required double? Volts { get; init; }

    /// <summary>What it can do to people.</summary>
    public required ImmutableArray<string> Hazards { get; init; }

    /// <summary>How it is isolated; Markdown, empty where not said.</summary>
    public required string Isolate { get; init; }

    /// <summary>How it is proved to be off; Markdown, empty where not said.</summary>
    public required string Verify { get; init; }

    /// <summary>What the reading must be, in words; empty where none is taken.</summary>
    public required string Expect { get; init; }

    /// <summary>How it comes back; Markdown, empty where not said.</summary>
    public required string Restore { get; init; }

    /// <summary>Where it is proved to be off; null where it is not said, so that its isolation ends with the proof.</summary>
    public required ProofDocument? Proof { get; init; }

    /// <summary>What must be true to isolate it and to bring it back.</summary>
    public required ImmutableArray<ConditionDocument> Needs { get; init; }

    /// <summary>The place in which one works on it, its own or that of the part around it; empty where nobody has to be in one.</summary>
    public required string Place { get; init; }

    /// <summary>What somebody must hold who works on it.</summary>
    public required ImmutableArray<string> Certificates { get; init; }

    /// <summary>How it stands at the start, and has to at the end: <c>live</c>.</summary>
    public required string Start { get; init; }
}

/// <summary>Where an energy is proved to be off: somebody has to get there.</summary>
/// <param name="Item">The joint, part or control at which it is done; empty where words say it.</param>
/// <param name="Words">Where, in words.</param>
/// <param name="Needs">What it takes to get there, beside what the item takes.</param>
public sealed record ProofDocument(string Item, string Words, ImmutableArray<ConditionDocument> Needs);

/// <summary>A fluid.</summary>
/// <param name="Name">The name.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Charge">What belongs in, in words; empty where not said.</param>
/// <param name="Hazards">What it can do to people.</param>
/// <param name="Empty">How it is emptied; Markdown, empty where not said.</param>
/// <param name="Fill">How it is filled; Markdown, empty where not said.</param>
/// <param name="Needs">What must be true to empty it and to fill it.</param>
/// <param name="Place">The place in which one works on it; empty where nobody has to be in one.</param>
/// <param name="Certificates">What somebody must hold who works on it.</param>
/// <param name="Start">How it stands at the start, and has to at the end: <c>full</c>.</param>
public sealed record FluidDocument(
    string Name,
    string Title,
    string Charge,
    ImmutableArray<string> Hazards,
    string Empty,
    string Fill,
    ImmutableArray<ConditionDocument> Needs,
    string Place,
    ImmutableArray<string> Certificates,
    string Start);

/// <summary>A control.</summary>
/// <param name="Name">The name.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Positions">Its positions.</param>
/// <param name="Needs">What must be true to move it.</param>
/// <param name="Place">The place in which one works on it; empty where nobody has to be in one.</param>
/// <param name="Certificates">What somebody must hold who works on it.</param>
/// <param name="Start">Where it stands at the start, and has to at the end.</param>
public sealed record ControlDocument(
    string Name,
    string Title,
    ImmutableArray<string> Positions,
    ImmutableArray<ConditionDocument> Needs,
    string Place,
    ImmutableArray<string> Certificates,
    string Start);
