using System.Collections.Frozen;
using ProcScript.Analysis.Settings;
using ProcScript.Model;

namespace ProcScript.Analysis.Whole;

/// <summary>A whole library with what came of its procedures, as the rules about libraries see it.</summary>
/// <param name="library">The library.</param>
/// <param name="settings">What the shop has chosen.</param>
/// <param name="families">The machines with their procedures, of machines that may be older objects than the library's.</param>
/// <param name="live">The files that work comes of.</param>
/// <param name="mentions">The names that are mentioned.</param>
internal sealed class LibraryView(Library library, CheckSettings settings, IReadOnlyCollection<MachineFamily> families, FrozenSet<string> live, LibraryMentions mentions)
{
    /// <summary>The library.</summary>
    public Library Library => library;

    /// <summary>What the shop has chosen for the library as a whole.</summary>
    public PathSettings Settings => settings.Everywhere;

    /// <summary>The machines with their procedures.</summary>
    public IReadOnlyCollection<MachineFamily> Families => families;

    /// <summary>Whether a procedure stands in a file, or one uses it, however far.</summary>
    public bool IsLive(string path) => live.Contains(path);

    /// <summary>Whether some file mentions a name elsewhere than where it is declared.</summary>
    public bool IsMentioned(string name) => mentions.Holds(name);
}
