namespace ProcScript.Generate;

/// <summary>A generator could not do its work; the message says why and what to do.</summary>
internal sealed class GenerationException(string message) : Exception(message);
