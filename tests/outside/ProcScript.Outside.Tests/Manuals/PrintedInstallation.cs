namespace ProcScript.Outside.Tests.Manuals;

/// <summary>
/// The installation of a manual as it is printed, a step a line: the step's number and the refit actions it comes to. <c>then</c> keeps
/// the order within a step, <c>and</c> leaves it open. Lines that begin with <c>#</c> say what the manual has otherwise, and why.
/// </summary>
/// <param name="Procedure">The procedure whose refit it is held to.</param>
/// <param name="Steps">Each step: runs of actions in order, each run in any order.</param>
internal sealed record PrintedInstallation(string Procedure, IReadOnlyList<IReadOnlyList<string[]>> Steps)
{
    /// <summary>Reads a file.</summary>
    public static PrintedInstallation Read(string path)
    {
        var lines = File.ReadAllLines(path).Where(line => line[0] != '#').ToList();
        return new PrintedInstallation(
            lines[0]["procedure ".Length..],
            [.. lines.Skip(1).Select(line => line[line.IndexOf(' ', StringComparison.Ordinal)..].Split(" then ").Select(Run).ToList())]);
    }

    private static string[] Run(string actions) => [.. actions.Split(" and ").Select(action => action.Trim()).Order(StringComparer.Ordinal)];
}
