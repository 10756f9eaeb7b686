using System.Text.RegularExpressions;

namespace ProcScript.Generate.Rules;

/// <summary>
/// Finds the rules by reading their files. Read as text and not from the built rooms, so that one run is enough after a rule
/// was added: the program that lists a rule cannot have been built with it.
/// </summary>
internal static partial class RuleFiles
{
    private const string Root = "Rule";

    /// <summary>The rooms that raise findings, from the ground up.</summary>
    public static IReadOnlyList<string> Rooms { get; } = ["ProcScript.Syntax", "ProcScript.Model", "ProcScript.Analysis"];

    /// <summary>The folder of a room's rules, from the repository's root.</summary>
    public static string Folder(string room) => $"src/{room}/Rules";

    /// <summary>The rules of all rooms in the order of their codes.</summary>
    /// <exception cref="GenerationException">A file does not say what it must, or two rules share a code or a name.</exception>
    public static IReadOnlyList<RuleFile> Find(string root)
    {
        var rules = Rooms.SelectMany(room => Find(root, room)).OrderBy(rule => rule.Code, StringComparer.Ordinal).ToList();
        RefuseDoubles(rules, rule => rule.Code);
        RefuseDoubles(rules, rule => rule.Name);
        return rules;
    }

    private static IEnumerable<RuleFile> Find(string root, string room)
    {
        var folder = Path.Combine(root, Folder(room));
        if (!Directory.Exists(folder))
        {
            return [];
        }

        var texts = Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories)
            .Where(path => !path.EndsWith(".g.cs", StringComparison.Ordinal))
            .Select(path => (Path: path, Text: File.ReadAllText(path)))
            .ToList();
        var bases = BasesOf(texts.Select(file => file.Text));
        return from file in texts
               let type = Class().Match(file.Text)
               where type.Success && bases.Contains(type.Groups["base"].Value)
               select Read(room, type.Groups["name"].Value, Path.GetRelativePath(root, file.Path), file.Text);
    }

    /// <summary>The classes that a rule may derive from: <c>Rule</c>, and each abstract class that derives from one of these.</summary>
    private static HashSet<string> BasesOf(IEnumerable<string> texts)
    {
        var bases = new HashSet<string>([Root], StringComparer.Ordinal);
        var declared = texts.SelectMany(text => AbstractClass().Matches(text)).ToList();
        while (declared.Any(match => bases.Contains(match.Groups["base"].Value) && bases.Add(match.Groups["name"].Value)))
        {
        }

        return bases;
    }

    private static RuleFile Read(string room, string type, string path, string text)
    {
        var info = Info().Match(text);
        var space = Namespace().Match(text);
        if (!info.Success || !space.Success)
        {
            throw new GenerationException(
                $"{path} holds the rule {type}, but not its identity as new(\"PRC…\", \"name\", \"Title\", Severity.…) in a namespace of the file.");
        }

        return new RuleFile(
            room,
            space.Groups["name"].Value,
            type,
            info.Groups["code"].Value,
            info.Groups["name"].Value,
            Regex.Unescape(info.Groups["title"].Value),
            info.Groups["severity"].Value.ToLowerInvariant());
    }

    private static void RefuseDoubles(IEnumerable<RuleFile> rules, Func<RuleFile, string> key)
    {
        var doubled = rules.GroupBy(key, StringComparer.Ordinal).FirstOrDefault(group => group.Count() > 1);
        if (doubled is not null)
        {
            throw new GenerationException($"{string.Join(" and ", doubled.Select(rule => rule.Class))} are both {doubled.Key}.");
        }
    }

    [GeneratedRegex(@"^(public|internal) sealed class (?<name>\w+)(\([^{;]*?\))?\s*:\s*(?<base>\w+)", RegexOptions.Multiline)]
    private static partial Regex Class();

    [GeneratedRegex(@"^(public|internal) abstract class (?<name>\w+)(<[^>]*>)?(\([^{;]*?\))?\s*:\s*(?<base>\w+)", RegexOptions.Multiline)]
    private static partial Regex AbstractClass();

    [GeneratedRegex("""\(\s*"(?<code>PRC\d{4})",\s*"(?<name>[a-z0-9-]+)",\s*"(?<title>([^"\\]|\\.)*)",\s*Severity\.(?<severity>\w+)""")]
    private static partial Regex Info();

    [GeneratedRegex(@"^namespace (?<name>[\w.]+);", RegexOptions.Multiline)]
    private static partial Regex Namespace();
}
