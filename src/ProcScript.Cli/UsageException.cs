namespace ProcScript.Cli;

/// <summary>The run cannot be done as asked; the message says what is in the way and, where there is one, a cure.</summary>
internal sealed class UsageException(string message) : Exception(message);
