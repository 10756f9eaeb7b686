using System.Collections.Immutable;

namespace ProcScript.Floor.Documents;

/// <summary>A code that somebody entered.</summary>
/// <param name="Code">The code.</param>
public sealed record PairRequest(string Code);

/// <summary>Somebody asks for new cards.</summary>
/// <param name="By">Who.</param>
public sealed record RefitRequest(string By);

/// <summary>How the server sees whoever asks.</summary>
/// <param name="Paired">Whether they are let in.</param>
/// <param name="Time">The server's clock.</param>
public sealed record Me(bool Paired, DateTimeOffset Time);

/// <summary>A photo that is kept.</summary>
/// <param name="File">Its path in the job.</param>
/// <param name="FileHash">Its SHA-256.</param>
/// <param name="Width">How wide it is, in pixels.</param>
/// <param name="Height">How high it is, in pixels.</param>
public sealed record KeptPhoto(string File, string FileHash, int Width, int Height);

/// <summary>The photos of a job.</summary>
/// <param name="Files">Their paths in the job.</param>
public sealed record KeptPhotos(ImmutableArray<string> Files);

/// <summary>A job has changed.</summary>
/// <param name="Job">The job; empty where so much has that all has to be asked for anew.</param>
/// <param name="Events">How many events its journal has now.</param>
public sealed record JobChange(string Job, int Events);
