using System.Collections.Immutable;
using ProcScript.Model;
using ProcScript.Model.Catalog;
using ProcScript.Model.Procedures;
using ProcScript.Model.Quantities;

namespace ProcScript.Analysis.Tools;

/// <summary>The torque wrenches that a procedure can see: the tools with a <c>range</c> in the files that it is made from.</summary>
/// <param name="All">The wrenches, the one with the least most torque first.</param>
internal sealed record TorqueWrenches(ImmutableArray<Tool> All)
{
    /// <summary>Those of a procedure.</summary>
    public static TorqueWrenches Of(Procedure procedure, Library library) => In(procedure.Files, library);

    /// <summary>Those of some files, in ordinal order.</summary>
    public static TorqueWrenches In(ImmutableArray<string> files, Library library) => new(
    [
        .. library.TorqueWrenches
            .Where(tool => files.BinarySearch(tool.Declared.Path, StringComparer.Ordinal) >= 0)
            .OrderBy(tool => Base(tool.Range!, tool.Range!.High))
            .ThenByDescending(tool => Base(tool.Range!, tool.Range!.Low))
            .ThenBy(tool => tool.Name, StringComparer.Ordinal),
    ]);

    /// <summary>
    /// The smallest wrench that covers a torque with all its stages; null where none does. A wrench is set to the nominal torque, so that,
    /// and not the tolerance around it, has to lie in its range; one too large is coarse at the low end of its scale (common practice).
    /// </summary>
    /// <param name="torque">The torque.</param>
    /// <param name="turnsCrowfoot">Whether it has to turn a crowfoot, which no screwdriver does.</param>
    public Tool? For(TighteningTorque torque, bool turnsCrowfoot = false) => All.FirstOrDefault(tool =>
        !(turnsCrowfoot && tool.Title.Contains("screwdriver", StringComparison.OrdinalIgnoreCase)) && torque.Stages.All(stage => Covers(tool, stage)));

    /// <summary>The stages of a torque that no wrench covers.</summary>
    public IEnumerable<Quantity> Uncovered(TighteningTorque torque) => torque.Stages.Where(stage => !All.Any(tool => Covers(tool, stage)));

    /// <summary>The noise of binary fractions in a change of units keeps no torque at the very end of a scale out of it.</summary>
    private static bool Covers(Tool tool, Quantity torque) => tool.Range is { } range
        && torque.BaseValue >= Base(range, range.Low) - 1e-9
        && torque.BaseValue <= Base(range, range.High) + 1e-9;

    private static double Base(Quantity range, double value) => (range with { Nominal = value }).BaseValue;
}
