namespace ProcScript.Cli.Tests;

/// <summary>A clock that stands still, so that the same run gives the same bytes.</summary>
internal sealed class StoppedClock : TimeProvider
{
    /// <summary>The day that it shows.</summary>
    public static DateOnly Day { get; } = new(2026, 6, 1);

    public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

    public override DateTimeOffset GetUtcNow() => new(Day, new TimeOnly(12, 0), TimeSpan.Zero);

    public override long GetTimestamp() => 0;
}
