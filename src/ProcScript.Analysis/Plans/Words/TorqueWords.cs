using System.Collections.Immutable;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Settings;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Plans.Words;

/// <summary>Torques as cards print them, in two units: the author's first, or that of the shop's torque wrenches.</summary>
/// <param name="unit">What the shop has chosen.</param>
/// <param name="book">The language.</param>
internal sealed class TorqueWords(TorqueUnit unit, Wordbook book)
{
    private static readonly Unit NewtonCentimetre = Units.Find("N.cm")!;

    /// <summary>One stage after the other, then the angles: <c>20 N·m (14.8 lbf·ft), then 40 N·m (29.5 lbf·ft), then 90° further</c>.</summary>
    public string Both(TighteningTorque torque) =>
        string.Join(book.Say("torque.then"), [.. torque.Stages.Select(Both), .. torque.Angles.Select(angle => book.Say("torque.further", ("angle", book.Print(angle))))]);

    /// <summary>The same stage by stage, each with what the wrench is set to: the middle of what is right.</summary>
    public ImmutableArray<PlanTorque> Stages(TighteningTorque torque) =>
        [.. torque.Stages.Select(Stage), .. torque.Angles.Select(angle => new PlanTorque(book.Print(angle), "", "") { IsAngle = true })];

    /// <summary>In both units: <c>22 ± 2 N·m (16.2 ± 1.5 lbf·ft)</c>.</summary>
    public string Both(Quantity torque)
    {
        var first = First(torque.Unit);
        return $"{torque.PrintIn(first, book.Numbers)} ({torque.PrintIn(Second(first), book.Numbers)})";
    }

    /// <summary>The least and the most of several torques: <c>5 N·m to 44 N·m</c>, <c>24 lbf·in to 28 lbf·ft</c>; one of them where all are the same.</summary>
    public string Range(IReadOnlyCollection<Quantity> torques)
    {
        var least = Nominal(torques.MinBy(torque => torque.BaseValue)!);
        var most = Nominal(torques.MaxBy(torque => torque.BaseValue)!);
        return least == most ? least : $"{least} {book.Numbers.To} {most}";
    }

    private Unit First(Unit written) => unit switch
    {
        TorqueUnit.NewtonMetre => Units.NewtonMetre,
        TorqueUnit.PoundForceFoot => Units.PoundForceFoot,
        _ => written,
    };

    /// <summary>The unit on the other side of the ocean, and of about the same size.</summary>
    private static Unit Second(Unit first) => first.Symbol switch
    {
        "N·m" => Units.PoundForceFoot,
        "N·cm" => Units.PoundForceInch,
        "ozf·in" or "kgf·cm" => NewtonCentimetre,
        _ => Units.NewtonMetre,
    };

    private PlanTorque Stage(Quantity torque)
    {
        var first = First(torque.Unit);
        var range = torque.Form == QuantityForm.Plain ? "" : (torque with { Form = QuantityForm.Range }).PrintIn(first, book.Numbers);
        return new PlanTorque(Nominal(torque), range, torque.PrintIn(Second(first), book.Numbers));
    }

    private string Nominal(Quantity torque) =>
        (torque with { Low = torque.Nominal, High = torque.Nominal, Form = QuantityForm.Plain }).PrintIn(First(torque.Unit), book.Numbers);
}
