namespace ProcScript.Model.Machines;

/// <summary>What the trade calls taking something off and putting it back, in the author's words.</summary>
/// <param name="Off">The verb on the way out: <c>press off</c>.</param>
/// <param name="On">The verb on the way back: <c>press on</c>.</param>
public sealed record VerbPair(string Off, string On);
