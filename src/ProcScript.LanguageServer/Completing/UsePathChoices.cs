using System.Globalization;
using System.Text.RegularExpressions;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.LanguageServer.Completing;

/// <summary>The files that a <c>use</c> could name.</summary>
internal static partial class UsePathChoices
{
    private const int File = 17;

    /// <summary>The items, those nearby first; null where no path of a <c>use</c> is being typed.</summary>
    public static IEnumerable<CompletionItem>? At(Asked asked, int offset)
    {
        var text = asked.Tree.Text;
        var line = text.LineSpan(text.LineAt(offset));
        var typed = Typed().Match(text.Content[line.Start..offset]);
        if (!typed.Success)
        {
            return null;
        }

        var rest = text.Content[offset..line.End];
        var end = rest.IndexOf('"', StringComparison.Ordinal) is >= 0 and var quote ? quote : rest.TrimEnd().Length;
        var place = asked.Places.RangeOf(TextSpan.FromBounds(line.Start + typed.Groups["path"].Index, offset + end));
        return Paths(asked, typed.Groups["path"].Value + rest[..end]).Select((path, index) => new CompletionItem(path, File)
        {
            SortText = index.ToString("D5", CultureInfo.InvariantCulture),
            TextEdit = new TextEdit(place, path),
        });
    }

    /// <summary>The files of the library, those that others use first, without those that are used already and those that use this one, which would make a circle.</summary>
    public static IEnumerable<string> Paths(Asked asked, string typed)
    {
        var used = asked.Tree.Root.Uses
            .Where(use => use.Path.Value != typed)
            .Select(use => LibraryPath.Resolve(asked.Path, use.Path.Value))
            .ToHashSet(StringComparer.Ordinal);
        var users = asked.Analysis.Library.Trees.SelectMany(tree => tree.Value.Root.Uses.Select(use => LibraryPath.Resolve(tree.Key, use.Path.Value)).OfType<string>()).CountBy(path => path).ToDictionary(StringComparer.Ordinal);
        return asked.Analysis.Files.Listed
            .Where(path => path != asked.Path && !used.Contains(path) && !asked.Analysis.Names.Reach(path).Contains(asked.Path))
            .Select(path => (Path: LibraryPath.Relative(asked.Path, path), Users: users.GetValueOrDefault(path), IsCatalog: asked.Analysis.Library.Trees.TryGetValue(path, out var tree) && tree.Root.Declarations.All(one => one is CatalogSyntax)))
            .OrderBy(one => one.Path.Contains('/', StringComparison.Ordinal) ? one.IsCatalog ? 1 : 3 : one.Users > 0 ? 0 : 2)
            .ThenBy(one => one.Path.Count(letter => letter == '/'))
            .ThenByDescending(one => one.Users)
            .ThenBy(one => one.Path, StringComparer.Ordinal)
            .Select(one => one.Path);
    }

    [GeneratedRegex("""^\s*use\s+"(?<path>[^"]*)$""")]
    private static partial Regex Typed();
}
