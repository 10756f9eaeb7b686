using System.Collections.Frozen;
using ProcScript.Analysis.Settings;
using ProcScript.Model;
using ProcScript.Syntax;

namespace ProcScript.Analysis.Whole;

/// <summary>A whole library with what came of its procedures, as the rules about libraries see it.</summary>
internal sealed class LibraryView
{
    private readonly Lazy<FrozenSet<string>> _live;
    private readonly Lazy<FrozenSet<string>> _mentioned;

    /// <summary>Looks at a library.</summary>
    /// <param name="library">The library.</param>
    /// <param name="settings">What the shop has chosen.</param>
    /// <param name="traces">What the procedures leave behind, in their order; of machines that may be older objects than the library's.</param>
    /// <param name="mentioned">The names that a file mentions.</param>
    public LibraryView(Library library, CheckSettings settings, IReadOnlyList<ProcedureTraces> traces, Func<SyntaxTree, MentionedNames> mentioned)
    {
        Library = library;
        Settings = settings.Everywhere;
        Traces = traces;
        _live = new Lazy<FrozenSet<string>>(() => LiveFiles.Of(library));
        _mentioned = new Lazy<FrozenSet<string>>(
            () => library.Trees.Values.SelectMany(tree => mentioned(tree).Names).ToFrozenSet(StringComparer.Ordinal));
    }

    /// <summary>The library.</summary>
    public Library Library { get; }

    /// <summary>What the shop has chosen for the library as a whole.</summary>
    public PathSettings Settings { get; }

    /// <summary>What the procedures leave behind, in their order.</summary>
    public IReadOnlyList<ProcedureTraces> Traces { get; }

    /// <summary>Whether a procedure stands in a file, or one uses it, however far.</summary>
    public bool IsLive(string path) => _live.Value.Contains(path);

    /// <summary>Whether some file mentions a name elsewhere than where it is declared.</summary>
    public bool IsMentioned(string name) => _mentioned.Value.Contains(name);
}
