using System.Globalization;
using System.Text.RegularExpressions;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Text;

namespace ProcScript.LanguageServer.Features;

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

    /// <summary>The files of the library, without those that are used already and those that use this one, which would make a circle.</summary>
    private static IEnumerable<string> Paths(Asked asked, string typed)
    {
        var used = asked.Tree.Root.Uses
            .Where(use => use.Path.Value != typed)
            .Select(use => LibraryPath.Resolve(asked.Path, use.Path.Value))
            .ToHashSet(StringComparer.Ordinal);
        return asked.Analysis.Files.Listed
            .Where(path => path != asked.Path && !used.Contains(path) && !asked.Analysis.Names.Reach(path).Contains(asked.Path))
            .Select(path => LibraryPath.Relative(asked.Path, path))
            .OrderBy(path => path.Count(letter => letter == '/'))
            .ThenBy(path => path, StringComparer.Ordinal);
    }

    [GeneratedRegex("""^\s*use\s+"(?<path>[^"]*)$""")]
    private static partial Regex Typed();
}
