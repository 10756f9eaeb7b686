using System.Text.RegularExpressions;

namespace ProcScript.Analysis.Tests.Messages;

/// <summary>The sources of the program, as the tests look for the keys of messages in them.</summary>
internal static partial class MessageFiles
{
    /// <summary>The C# texts of the rooms, their quoted texts, and the templates.</summary>
    public static IEnumerable<string> Texts => Sources("*.cs").Concat(Sources("*.html")).Concat(Sources("*.md")).Concat(Sources("*.css"));

    /// <summary>Every quoted text in them that could be a key, and every beginning of one that is put together.</summary>
    public static (HashSet<string> Keys, HashSet<string> Beginnings) Named()
    {
        var texts = Texts.Select(File.ReadAllText).ToList();
        return (
            [
                .. texts.SelectMany(text => Quoted().Matches(text)).Select(match => match.Groups["key"].Value),
                // The script of a pack has messages of its own, and names them without what they begin with.
                .. Sources("*.js").Select(File.ReadAllText).SelectMany(text => Quoted().Matches(text)).Select(match => $"js.{match.Groups["key"].Value}"),
            ],
            texts.SelectMany(text => PutTogether().Matches(text)).Select(match => match.Groups["start"].Value).ToHashSet());
    }

    private static IEnumerable<string> Sources(string pattern) =>
        new[] { "src/ProcScript.Analysis", "src/ProcScript.Cards" }
            .SelectMany(folder => Directory.EnumerateFiles(Path.Combine(Checkout.Root, folder), pattern, SearchOption.AllDirectories))
            .Where(path => !path.Split(Path.DirectorySeparatorChar).Intersect(["bin", "obj"]).Any());

    [GeneratedRegex("""["'](?<key>[a-z]+(-[a-z0-9]+)*(\.[a-z0-9]+(-[a-z0-9]+)*)*)["']""", RegexOptions.CultureInvariant)]
    private static partial Regex Quoted();

    [GeneratedRegex("""(\$"(?<start>[a-z.-]+[.-])\{|'(?<start>[a-z.-]+[.-])' \+)""", RegexOptions.CultureInvariant)]
    private static partial Regex PutTogether();
}
