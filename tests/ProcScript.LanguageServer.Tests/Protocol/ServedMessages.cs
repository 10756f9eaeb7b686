using System.Text.RegularExpressions;

namespace ProcScript.LanguageServer.Tests.Protocol;

/// <summary>Every message that the server's source names, with the types that it reads and writes them as.</summary>
internal static partial class ServedMessages
{
    /// <summary>What clients send.</summary>
    public static IEnumerable<(string Method, string Parameters, string? Result)> Received(string sources) => Sources(sources)
        .SelectMany(source => Handler().Matches(source))
        .Select(match => (match.Groups["method"].Value, match.Groups["parameters"].Value, match.Groups["result"] is { Success: true } result ? result.Value : null));

    /// <summary>What the server sends of its own accord.</summary>
    public static IEnumerable<(string Method, string? Parameters)> Sent(string sources) => Sources(sources)
        .SelectMany(source => Call().Matches(source).Concat(Refresh().Matches(source)))
        .Select(match => (match.Groups["method"].Value, match.Groups["parameters"] is { Success: true } parameters ? parameters.Value : null))
        .Distinct();

    private static IEnumerable<string> Sources(string folder) => Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories)
        .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
        .Order(StringComparer.Ordinal)
        .Select(File.ReadAllText);

    [GeneratedRegex(@"ethods\.(Request|Notification|First)<(?<parameters>\w+)(, (?<result>[\w<>]+\??))?>\(\s*""(?<method>[^""]+)""")]
    private static partial Regex Handler();

    [GeneratedRegex(@"onnection\.(Notify|Ask)\(""(?<method>[^""]+)""(, new (?<parameters>\w+))?")]
    private static partial Regex Call();

    [GeneratedRegex(@"""(?<method>workspace/\w+/refresh)""")]
    private static partial Regex Refresh();
}
