using System.Collections.Immutable;
using ProcScript.Analysis.Plans.Steps;
using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Machines.Documents;

/// <summary>Writes machines down as data.</summary>
public static class ModelBuilder
{
    private const string Format = "1";

    /// <summary>The machines, in their order.</summary>
    public static ModelDocument Build(IEnumerable<Machine> machines) => new(Format, [.. machines.Select(Of)]);

    private static MachineDocument Of(Machine machine) => new()
    {
        Name = machine.Name,
        Title = machine.Title,
        Options = [.. machine.Options.Select(option => option.Name)],
        With = [.. machine.With.Select(option => option.Name)],
        Kinds =
        [
            .. machine.Joints.Select(joint => joint.Kind).DistinctBy(kind => kind.Name).Select(kind => new KindDocument(
                kind.Name,
                kind.Title,
                kind.Category.ToString().ToLowerInvariant(),
                kind.SingleUse,
                kind.Captive,
                kind.Thread ?? "",
                kind.Grade ?? "")),
        ],
        Places = [.. machine.Places.Select(place => new PlaceDocument(place.Name, place.Title, place.Room))],
        Certificates =
        [
            .. machine.Items.Values.SelectMany(item => item.Certificates).Distinct().OrderBy(one => one.Name, StringComparer.Ordinal)
                .Select(one => new CertificateDocument(one.Name, one.Title)),
        ],
        Parts = [.. machine.Parts.Select(Of)],
        Joints = [.. machine.Joints.Select(Of)],
        Energies = [.. machine.Energies.Select(Of)],
        Fluids = [.. machine.Fluids.Select(Of)],
        Controls = [.. machine.Controls.Select(Of)],
    };

    private static PartDocument Of(Part part) => new()
    {
        Name = part.Name,
        Title = part.Title,
        Parent = part.Parent?.Name ?? "",
        Kilograms = part.Mass?.BaseValue,
        SingleUse = part.SingleUse,
        Hazards = Hazards(part),
        Needs = ConditionDocuments.Of(part.Conditions),
        WayOut = ConditionDocuments.Of(part.WayOut),
        Aside = part.Aside is { } way
            ? new AsideDocument(way.How ?? "", [.. way.Joints.Select(joint => joint.Name)], ConditionDocuments.Of(way.Conditions))
            : null,
        RenewWith = [.. part.RenewWith.Select(item => item.Name)],
        Figures = Figures(part),
        Place = Place(part),
        Certificates = Certificates(part),
        Temporary = part.IsTemporary,
        Caps = part.Cap?.Count ?? 0,
        Start = part.IsTemporary ? "out" : "fitted",
    };

    private static JointDocument Of(Joint joint) => new()
    {
        Name = joint.Name,
        Title = joint.Title,
        Role = joint.Role.ToString().ToLowerInvariant(),
        Count = joint.Count,
        Kind = joint.Kind.Name,
        Part = joint.Owner.Name,
        To = joint.Role == JointRole.Cover ? "" : joint.Other?.Name ?? "",
        Covers = joint.Over?.Name ?? "",
        IsLock = joint.IsLock,
        SingleUse = joint.SingleUse,
        On = joint.On?.Name ?? "",
        Carries = joint.Carries?.Name ?? "",
        At = joint.At ?? "",
        Torque = joint.Torque?.Print() ?? "",
        Hazards = Hazards(joint),
        Needs = ConditionDocuments.Of(joint.Conditions),
        RenewWith = [.. joint.RenewWith.Select(item => item.Name)],
        Figures = Figures(joint),
        Place = Place(joint),
        Certificates = Certificates(joint),
        Signed = joint.Signed,
        Temporary = joint.IsTemporary,
        Caps = joint.Cap?.Count ?? 0,
        Start = joint.IsTemporary ? 0 : joint.Count,
    };

    private static EnergyDocument Of(Energy energy) => new()
    {
        Name = energy.Name,
        Title = energy.Title,
        After = [.. energy.After.Select(first => first.Name)],
        Volts = energy.Voltage?.BaseValue,
        Hazards = Hazards(energy),
        Isolate = energy.Isolate ?? "",
        Verify = energy.Verify ?? "",
        Expect = energy.VerifyExpect?.Print() ?? "",
        Restore = energy.Restore ?? "",
        Proof = energy.VerifyAt is { } place ? new ProofDocument(place.Item?.Name ?? "", place.Words, ConditionDocuments.Of(place.Conditions)) : null,
        Needs = ConditionDocuments.Of(energy.Conditions),
        Place = Place(energy),
        Certificates = Certificates(energy),
        Start = "live",
    };

    private static FluidDocument Of(Fluid fluid) => new(
        fluid.Name,
        fluid.Title,
        fluid.Charge?.Print() ?? "",
        Hazards(fluid),
        fluid.Empty ?? "",
        fluid.Fill ?? "",
        ConditionDocuments.Of(fluid.Conditions),
        Place(fluid),
        Certificates(fluid),
        "full");

    private static ControlDocument Of(Control control) =>
        new(control.Name, control.Title, control.Positions, ConditionDocuments.Of(control.Conditions), Place(control), Certificates(control), control.Positions[0]);

    private static string Place(MachineItem item) => StepRooms.Of(item) is { } place && place != Workplace.None ? place.Name : "";

    private static ImmutableArray<string> Certificates(MachineItem item) => [.. item.Certificates.Select(one => one.Name)];

    private static ImmutableArray<FigureDocument> Figures(MachineItem item) =>
        [.. item.Figures.Select(figure => new FigureDocument(figure.Path, figure.Caption, figure.Phase.ToString().ToLowerInvariant()))];

    private static ImmutableArray<string> Hazards(MachineItem item) => [.. item.Hazards.Select(HazardWords.Of)];
}
