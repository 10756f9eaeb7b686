using System.Text;
using ProcScript.Syntax.Text;

namespace ProcScript.Cli.Verbs;

/// <summary>The texts that <c>new</c> writes, with their blanks filled in.</summary>
internal static class StartText
{
    private const string ExampleMachine = "example_machine";

    /// <summary>A machine to fill.</summary>
    public static string Machine(string name, string title) => Fill("machine", ("NAME", name), ("TITLE", Escaped(title)));

    /// <summary>A procedure, and a small machine that it works on.</summary>
    public static string ProcedureWithMachine(string name, string title) =>
        Fill("example", ("NAME", ExampleMachine), ("TITLE", "Example machine")) + "\n"
        + Fill("procedure", ("NAME", name), ("TITLE", Escaped(title)), ("MACHINE", ExampleMachine));

    /// <summary>A procedure on a machine that another file declares.</summary>
    public static string Procedure(string name, string title, string file, string machine) =>
        Fill("procedure-on", ("NAME", name), ("TITLE", Escaped(title)), ("FILE", file), ("MACHINE", machine));

    private static string Fill(string start, params ReadOnlySpan<(string Blank, string Value)> values)
    {
        using var resource = typeof(StartText).Assembly.GetManifestResourceStream($"{start}.proc")
            ?? throw new InvalidOperationException($"The program was built without {start}.proc.");
        using StreamReader reader = new(resource);
        StringBuilder text = new(reader.ReadToEnd());
        foreach (var (blank, value) in values)
        {
            text.Replace(blank, value);
        }

        return text.ToString();
    }

    private static string Escaped(string title) => TextQuotes.Escaped(title).Replace("{", "{{", StringComparison.Ordinal);
}
