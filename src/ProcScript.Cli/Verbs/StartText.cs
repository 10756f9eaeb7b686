namespace ProcScript.Cli.Verbs;

/// <summary>The texts that <c>new</c> writes, with their blanks filled in.</summary>
internal static class StartText
{
    private const string ExampleMachine = "example_machine";

    /// <summary>A machine with a catalog.</summary>
    public static string Machine(string name) => Fill("machine", ("NAME", name), ("TITLE", Title(name)));

    /// <summary>A procedure, and the machine it works on.</summary>
    public static string ProcedureWithMachine(string name) =>
        Machine(ExampleMachine) + "\n" + Fill("procedure", ("NAME", name), ("TITLE", Title(name)), ("MACHINE", ExampleMachine));

    /// <summary>A procedure on a machine that another file declares.</summary>
    public static string Procedure(string name, string file, string machine) =>
        Fill("procedure-on", ("NAME", name), ("TITLE", Title(name)), ("FILE", file), ("MACHINE", machine));

    private static string Title(string name)
    {
        var words = name.Replace('_', ' ').Trim();
        return words.Length == 0 ? name : char.ToUpperInvariant(words[0]) + words[1..];
    }

    private static string Fill(string start, params ReadOnlySpan<(string Blank, string Value)> values)
    {
        using var resource = typeof(StartText).Assembly.GetManifestResourceStream($"{start}.proc")
            ?? throw new InvalidOperationException($"The program was built without {start}.proc.");
        using StreamReader reader = new(resource);
        var text = reader.ReadToEnd();
        foreach (var (blank, value) in values)
        {
            text = text.Replace(blank, value, StringComparison.Ordinal);
        }

        return text;
    }
}
