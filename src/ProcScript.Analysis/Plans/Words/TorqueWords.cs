using ProcScript.Analysis.Settings;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Plans.Words;

/// <summary>Torques as cards print them, in two units: that of the shop's torque wrenches first.</summary>
/// <param name="unit">The unit of the torque wrenches.</param>
internal sealed class TorqueWords(TorqueUnit unit)
{
    private readonly Unit _first = unit == TorqueUnit.NewtonMetre ? Units.NewtonMetre : Units.PoundForceFoot;
    private readonly Unit _second = unit == TorqueUnit.NewtonMetre ? Units.PoundForceFoot : Units.NewtonMetre;

    /// <summary>One stage after the other, then the angles: <c>20 N·m (14.8 lbf·ft), then 40 N·m (29.5 lbf·ft), then 90° further</c>.</summary>
    public string Both(TighteningTorque torque) =>
        string.Join(", then ", [.. torque.Stages.Select(Both), .. torque.Angles.Select(angle => $"{angle.Print()} further")]);

    /// <summary>In both units: <c>22 ± 2 N·m (16.2 ± 1.5 lbf·ft)</c>.</summary>
    public string Both(Quantity torque) => $"{torque.PrintIn(_first)} ({torque.PrintIn(_second)})";

    /// <summary>The least and the most of several torques: <c>5 N·m to 44 N·m</c>; one of them where all are the same.</summary>
    public string Range(IReadOnlyCollection<Quantity> torques)
    {
        var least = Nominal(torques.MinBy(torque => torque.BaseValue)!);
        var most = Nominal(torques.MaxBy(torque => torque.BaseValue)!);
        return least == most ? least : $"{least} to {most}";
    }

    private string Nominal(Quantity torque) =>
        (torque with { Low = torque.Nominal, High = torque.Nominal, Form = Syntax.Nodes.QuantityForm.Plain }).PrintIn(_first);
}
