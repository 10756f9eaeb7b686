using ProcScript.Analysis.Whole;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Rules;

/// <summary>A rule about a whole library that judges each machine by itself, with all the procedures on it.</summary>
public abstract class MachineFamilyRule : LibraryRule
{
    /// <summary>What it has to say of a machine.</summary>
    internal abstract IEnumerable<Finding> Check(LibraryView view, MachineFamily family);

    /// <inheritdoc/>
    internal sealed override IEnumerable<Finding> Check(LibraryView view) => view.Families.SelectMany(family => Check(view, family));
}
