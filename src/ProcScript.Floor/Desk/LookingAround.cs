using ProcScript.Jobs.Stores;

namespace ProcScript.Floor.Desk;

/// <summary>Looks from time to time for what other programs have written into the journals, and has the index keep what is known.</summary>
/// <param name="board">The board.</param>
/// <param name="clock">The clock.</param>
/// <param name="faults">Where it is said that the journals cannot be read.</param>
internal sealed class LookingAround(ShopBoard board, TimeProvider clock, TextWriter faults) : BackgroundService
{
    private static readonly TimeSpan Often = TimeSpan.FromSeconds(1);

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        // The server listens at once, and does not wait for the first look.
        await Task.Yield();
        var said = "";
        try
        {
            while (true)
            {
                try
                {
                    await board.LookAsync(stoppingToken);
                    board.Keep();
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

                await Task.Delay(board.GoodFor > Often ? board.GoodFor : Often, clock, stoppingToken);
            }
        }
        finally
        {
            board.Keep();
        }
    }
}
