namespace ProcScript.Bench.Peers;

/// <summary>A general-purpose compiler or linter of another language, to measure beside.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Program">The native program itself, without what else its package starts it with.</param>
/// <param name="Write">Writes clean texts of its language into a folder, so many files.</param>
/// <param name="Check">The arguments that have it check the folder.</param>
internal sealed record Peer(string Name, string Program, Action<string, int> Write, Func<string, IReadOnlyList<string>> Check);
