using System.Collections.Immutable;
using ProcScript.Model.Sources;
using ProcScript.Syntax;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Names;

/// <summary>Which words of a library mean the same thing. It asks for no error-free text: an editor needs it while one types.</summary>
/// <param name="trees">The files.</param>
/// <param name="known">The names of trees that were walked before; may be shared from one library to the next.</param>
public sealed class LibraryNames(ImmutableSortedDictionary<string, SyntaxTree> trees, KnownNames known)
{
    private readonly Dictionary<string, ImmutableSortedSet<string>> _reach = new(StringComparer.Ordinal);
    private readonly Lock _lock = new();

    /// <summary>The names of a file; null where the library does not hold it.</summary>
    public FileNames? In(string path) => trees.TryGetValue(path, out var tree) ? known.Of(tree) : null;

    /// <summary>What a word means; null where nothing in sight declares it.</summary>
    public NamedThing? Meaning(NameUse use, string path) => use.Scope switch
    {
        NameScope.Block => new NamedThing(use.Scope, path, use.Owner, use.Name),
        NameScope.Library => Declaring(use.Name, path) is { } file ? new NamedThing(use.Scope, file, "", use.Name) : null,
        _ => Declaring(use.Owner, path) is { } file && In(file)!.Named(use.Name).Any(one => one.IsDeclaration && one.Scope == use.Scope && one.Owner == use.Owner)
            ? new NamedThing(use.Scope, file, use.Owner, use.Name)
            : null,
    };

    /// <summary>The word at an offset of a file with what it means; null where there is none.</summary>
    public (NameUse Use, NamedThing Thing)? At(string path, int offset) =>
        In(path)?.At(offset) is { } use && Meaning(use, path) is { } thing ? (use, thing) : null;

    /// <summary>Every word that means a thing, in the order of files and text.</summary>
    public IEnumerable<(string Path, NameUse Use)> Uses(NamedThing thing)
    {
        foreach (var path in trees.Keys)
        {
            foreach (var use in In(path)!.Named(thing.Name))
            {
                if (use.Scope == thing.Scope && Meaning(use, path) == thing)
                {
                    yield return (path, use);
                }
            }
        }
    }

    /// <summary>The words that declare a thing.</summary>
    public IEnumerable<SourceSpan> Declarations(NamedThing thing) => In(thing.Path)!.Named(thing.Name)
        .Where(use => use.IsDeclaration && use.Scope == thing.Scope && use.Owner == thing.Owner)
        .Select(use => new SourceSpan(thing.Path, use.Span));

    /// <summary>The files that a file sees, itself among them.</summary>
    public ImmutableSortedSet<string> Reach(string path)
    {
        lock (_lock)
        {
            if (!_reach.TryGetValue(path, out var reach))
            {
                _reach[path] = reach = Walk(path);
            }

            return reach;
        }
    }

    /// <summary>Whether a name of the library or of a machine is taken in sight of a use of the thing.</summary>
    public SourceSpan? Clash(NamedThing thing, string name)
    {
        var others = thing.Scope switch
        {
            NameScope.Library => Uses(thing).Select(use => use.Path).Distinct(StringComparer.Ordinal)
                .Select(path => Declaring(name, path))
                .OfType<string>()
                .SelectMany(path => Declarations(new NamedThing(NameScope.Library, path, "", name))),
            NameScope.Machine => Declarations(thing with { Name = name }),
            _ => [],
        };
        return others.Concat(VariablesAt(thing, name)).Cast<SourceSpan?>().FirstOrDefault();
    }

    /// <summary>A variable of the new name in a file where a variable is renamed: the inner one would hide the other.</summary>
    private IEnumerable<SourceSpan> VariablesAt(NamedThing thing, string name) => thing.Scope != NameScope.Block
        ? []
        : In(thing.Path)!.Named(name).Where(use => use.Scope == NameScope.Block).Select(use => new SourceSpan(thing.Path, use.Span));

    /// <summary>The file that declares a name for a file: itself, else the first that it sees.</summary>
    private string? Declaring(string name, string path) =>
        Declares(path, name) ? path : Reach(path).FirstOrDefault(file => Declares(file, name));

    private bool Declares(string path, string name) =>
        In(path)?.Declares(name) ?? false;

    private ImmutableSortedSet<string> Walk(string start) => FileUses
        .Reach(new[] { start }.Where(trees.ContainsKey), path => FileUses.Of(path, trees[path]).Where(trees.ContainsKey))
        .ToImmutableSortedSet(StringComparer.Ordinal);
}
