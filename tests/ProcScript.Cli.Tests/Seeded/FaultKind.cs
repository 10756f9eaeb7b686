namespace ProcScript.Cli.Tests.Seeded;

/// <summary>A mistake that somebody makes in a clean file of a generated library, and what a check must say of it.</summary>
/// <param name="Code">The rule that must find it.</param>
/// <param name="Line">How the line begins where it is made; <c>#</c> is the number of the first module that the procedure takes out.</param>
/// <param name="Instead">What stands there instead.</param>
internal sealed record FaultKind(string Code, string Line, params string[] Instead)
{
    /// <summary>Which of the new lines must be found.</summary>
    public int At { get; init; }

    /// <summary>How a later line begins that must be found and not the one where the mistake is made; empty for that one.</summary>
    public string Later { get; init; } = "";

    /// <summary>Makes the mistake.</summary>
    /// <returns>The text, and the line that must be found, counted from 1.</returns>
    public (string Text, int Line) Make(string text, int module)
    {
        var lines = text.Split('\n').ToList();
        var at = Find(lines, Numbered(Line, module), from: 0);
        lines.RemoveAt(at);
        lines.InsertRange(at, Instead.Select(line => Numbered(line, module)));
        var found = Later.Length == 0 ? at + At : Find(lines, Numbered(Later, module), at);
        return (string.Join('\n', lines), found + 1);
    }

    private static int Find(List<string> lines, string beginning, int from)
    {
        var found = lines.FindIndex(from, line => line.TrimStart().StartsWith(beginning, StringComparison.Ordinal));
        return found >= 0 ? found : throw new InvalidOperationException($"The generated files have no line '{beginning}' any more.");
    }

    private static string Numbered(string text, int module) => text.Replace("#", module.ToString(System.Globalization.CultureInfo.InvariantCulture), StringComparison.Ordinal);
}
