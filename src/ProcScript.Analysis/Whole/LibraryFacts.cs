using System.Collections.Frozen;
using ProcScript.Analysis.Settings;
using ProcScript.Model;

namespace ProcScript.Analysis.Whole;

/// <summary>All that the rules about libraries may look at; they see it through a <see cref="LibraryView"/> each.</summary>
/// <param name="Library">The library.</param>
/// <param name="Settings">What the shop has chosen for the library as a whole.</param>
/// <param name="Families">The machines with their procedures.</param>
/// <param name="Live">The files that work comes of.</param>
/// <param name="Mentions">The names that are mentioned.</param>
internal sealed record LibraryFacts(
    Library Library, PathSettings Settings, IReadOnlyCollection<MachineFamily> Families, FrozenSet<string> Live, LibraryMentions Mentions);
