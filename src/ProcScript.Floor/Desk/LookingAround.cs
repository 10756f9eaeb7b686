using ProcScript.Jobs.Stores;

namespace ProcScript.Floor.Desk;

/// <summary>Looks from time to time for what other programs have written into the journals.</summary>
/// <param name="desk">The jobs.</param>
/// <param name="faults">Where it is said that they cannot be read.</param>
internal sealed class LookingAround(JobDesk desk, TextWriter faults) : BackgroundService
{
    private static readonly TimeSpan Often = TimeSpan.FromSeconds(1);

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using PeriodicTimer timer = new(Often, desk.Clock);
        var said = "";
        while (await timer.WaitForNextTickAsync(stoppingToken))
        {
            try
            {
                await desk.LookAroundAsync(stoppingToken);
                said = "";
            }
            catch (Exception failure) when (failure is JobStoreException or System.Data.Common.DbException or IOException)
            {
                // It may be a share that is away for a while: said once.
                if (failure.Message != said)
                {
                    await faults.WriteLineAsync($"procscript-floor: {said = failure.Message}");
                }
            }
        }
    }
}
