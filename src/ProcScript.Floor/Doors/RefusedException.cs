namespace ProcScript.Floor.Doors;

/// <summary>A request is refused: the answer says so, and the log.</summary>
/// <param name="status">The status of HTTP.</param>
/// <param name="why">Why, as a sentence for whoever holds the tablet.</param>
public sealed class RefusedException(int status, string why) : Exception(why)
{
    /// <summary>The status of HTTP.</summary>
    public int Status => status;
}
