using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Plans.Words;

/// <summary>Torques as cards print them, in both units of the shop.</summary>
internal static class TorqueWords
{
    /// <summary>One stage after the other, then the angles: <c>20 N·m (14.8 lbf·ft), then 40 N·m (29.5 lbf·ft), then 90° further</c>.</summary>
    public static string Both(TighteningTorque torque) =>
        string.Join(", then ", [.. torque.Stages.Select(Both), .. torque.Angles.Select(angle => $"{angle.Print()} further")]);

    /// <summary>In N·m first and lbf·ft after it: <c>22 ± 2 N·m (16.2 ± 1.5 lbf·ft)</c>.</summary>
    public static string Both(Quantity torque) => $"{torque.PrintIn(Units.NewtonMetre)} ({torque.PrintIn(Units.PoundForceFoot)})";

    /// <summary>The least and the most of several torques: <c>5 N·m to 44 N·m</c>; one of them where all are the same.</summary>
    public static string Range(IReadOnlyCollection<Quantity> torques)
    {
        var least = Nominal(torques.MinBy(torque => torque.BaseValue)!);
        var most = Nominal(torques.MaxBy(torque => torque.BaseValue)!);
        return least == most ? least : $"{least} to {most}";
    }

    private static string Nominal(Quantity torque) =>
        (torque with { Low = torque.Nominal, High = torque.Nominal, Form = Syntax.Nodes.QuantityForm.Plain }).PrintIn(Units.NewtonMetre);
}
