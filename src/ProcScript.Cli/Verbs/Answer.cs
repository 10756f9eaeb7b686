using ProcScript.Analysis.Reaching;
using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Verbs;

/// <summary>Prints the answers to questions about a machine.</summary>
internal static class Answer
{
    /// <summary>Writes lines: what begins with <c>!</c> keeps people safe, what is not indented is a heading.</summary>
    public static void Write(Terminal terminal, IEnumerable<string> lines)
    {
        foreach (var line in lines)
        {
            terminal.WriteLine(new Piece(PrintableText.Of(line), InkOf(line)));
        }
    }

    /// <summary>Says why there is no answer.</summary>
    public static ExitCode Refuse(ReachRefusedException refusal, DiskSourceStore store, Surroundings around)
    {
        store.RefuseUnreadable();
        around.Error.WriteLine(LogCommands.DisarmLines($"procscript: {refusal.Message}"));
        return ExitCode.Findings;
    }

    private static Ink InkOf(string line) => line.TrimStart() switch
    {
        ['!', ' ', ..] => Ink.Warning,
        ['+', ' ', ..] => Ink.Added,
        ['-', ' ', ..] => Ink.Removed,
        _ when line.Length > 0 && line[0] != ' ' => Ink.Strong,
        _ => Ink.Plain,
    };
}
