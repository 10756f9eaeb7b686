using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Totals;

/// <summary>Pieces that come off in one step and go back in another.</summary>
/// <param name="Stage">The strip stage, by index.</param>
/// <param name="Joint">The joint or cover that they are of.</param>
/// <param name="Count">How many.</param>
/// <param name="StripStep">The step that takes them off.</param>
/// <param name="RefitStep">The step that puts them back.</param>
internal readonly record struct LooseHardware(int Stage, Joint Joint, int Count, int StripStep, int RefitStep);
