using System.Collections.Concurrent;
using System.Collections.Immutable;
using ProcScript.Analysis.Plans;
using ProcScript.Floor.Documents;
using ProcScript.Floor.Doors;
using ProcScript.Jobs.Standing;
using ProcScript.Jobs.Stores;

namespace ProcScript.Floor.Desk;

/// <summary>
/// The jobs that are worked on, each played once and carried on event by event. The journals are the truth: what another program writes into one is
/// taken up, and nothing is kept here that they do not say.
/// </summary>
/// <param name="store">Where the jobs are kept.</param>
/// <param name="board">The board, which shows what is told here.</param>
/// <param name="clock">The clock.</param>
public sealed class JobDesk(IJobStore store, ShopBoard board, TimeProvider clock)
{
    /// <summary>The most jobs that are held at once: those that nobody has asked for longest go.</summary>
    private const int MostHeld = 200;

    private readonly ConcurrentDictionary<string, HeldJob> _held = new(StringComparer.Ordinal);

    /// <summary>All that a tablet needs of a job.</summary>
    /// <param name="job">The job.</param>
    /// <param name="stop">Ends the work.</param>
    public Task<JobPage> PageAsync(string job, CancellationToken stop) => WithAsync(
        job,
        async held =>
        {
            await held.CatchUpAsync(store, stop);
            return new JobPage(job, held.Cards(), held.Now(clock));
        },
        stop);

    /// <summary>How a job stands.</summary>
    /// <param name="job">The job.</param>
    /// <param name="stop">Ends the work.</param>
    public Task<JobNow> NowAsync(string job, CancellationToken stop) => WithAsync(
        job,
        async held =>
        {
            await held.CatchUpAsync(store, stop);
            return held.Now(clock);
        },
        stop);

    /// <summary>The events of a job after one.</summary>
    /// <param name="job">The job.</param>
    /// <param name="after">The number of that one; 0 for all.</param>
    /// <param name="stop">Ends the work.</param>
    public Task<JournalPart> EventsAsync(string job, int after, CancellationToken stop) =>
        WithAsync(
            job,
            async held =>
            {
                await held.CatchUpAsync(store, stop);
                return new JournalPart([.. held.Replay.Events.Skip(after)], held.Replay.Events.Count);
            },
            stop);

    /// <summary>A picture of the cards; null where they have none of that hash.</summary>
    /// <param name="job">The job.</param>
    /// <param name="hash">The hash.</param>
    /// <param name="stop">Ends the work.</param>
    public Task<PlanFigure?> FigureAsync(string job, string hash, CancellationToken stop) => WithAsync(
        job, held => Task.FromResult(held.Replay.Course.Steps.SelectMany(step => step.Line.Figures).FirstOrDefault(figure => figure.Hash == hash && figure.Content.Length > 0)), stop);

    /// <summary>Writes down what a tablet tells, in its order. What cannot be is answered with the reason, and the rest goes on.</summary>
    /// <param name="job">The job.</param>
    /// <param name="told">What it tells.</param>
    /// <param name="stop">Ends the work.</param>
    public async Task<EventAnswers> TellAsync(string job, ToldEvents told, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(told);
        return await WithAsync(
            job,
            async held =>
            {
                var answers = ImmutableArray.CreateBuilder<EventAnswer>();
                await held.CatchUpAsync(store, stop);
                var before = held.Replay.Events.Count;
                try
                {
                    foreach (var one in told.Events)
                    {
                        answers.Add(await held.TakeAsync(store, one, clock.GetUtcNow(), stop));
                    }
                }
                finally
                {
                    if (held.Replay.Events.Count > before)
                    {
                        Tell(job, held);
                    }
                }

                return new EventAnswers(answers.ToImmutable(), held.Now(clock));
            },
            stop);
    }

    /// <summary>Makes new cards where a job has left its own.</summary>
    /// <param name="job">The job.</param>
    /// <param name="by">Who asks for them.</param>
    /// <param name="stop">Ends the work.</param>
    /// <exception cref="RefusedException">There are none to be made.</exception>
    public Task<JobPage> RefitAsync(string job, string by, CancellationToken stop) => WithAsync(
        job,
        async held =>
        {
            await held.RefitAsync(store, by, clock.GetUtcNow(), stop);
            Tell(job, held);
            return new JobPage(job, held.Cards(), held.Now(clock));
        },
        stop);

    private void Tell(string job, HeldJob held) => board.Put(job, new KnownLine(held.Stamp, JobLine.Of(job, held.Replay.Events), null));

    private async Task<T> WithAsync<T>(string job, Func<HeldJob, Task<T>> work, CancellationToken stop)
    {
        if (!JobNames.IsName(job))
        {
            throw new RefusedException(StatusCodes.Status400BadRequest, $"'{job}' is no name of a job: letters, digits, '_', '-' and '.' are.");
        }

        var held = _held.GetOrAdd(job, name => new HeldJob(name));
        try
        {
            return await held.WithAsync(store, work, clock, stop);
        }
        catch (JobStoreException) when (!held.IsLoaded)
        {
            _held.TryRemove(new KeyValuePair<string, HeldJob>(job, held));
            throw await IsThereAsync(job, stop) ? Rethrown(job) : NotThere(job);
        }
        catch (JobStoreException)
        {
            if (await IsThereAsync(job, stop))
            {
                throw;
            }

            _held.TryRemove(new KeyValuePair<string, HeldJob>(job, held));
            throw NotThere(job);
        }
        finally
        {
            LetGo();
        }

        static RefusedException NotThere(string name) => new(StatusCodes.Status404NotFound, $"There is no job '{name}'.");
        static JobStoreException Rethrown(string name) => new($"The job '{name}' cannot be played: its journal, or what its cards were made from, is not as it was. 'procscript job status' says what.");
    }

    private async Task<bool> IsThereAsync(string job, CancellationToken stop) => (await store.StampsAsync(stop)).ContainsKey(job);

    private void LetGo()
    {
        if (_held.Count <= MostHeld)
        {
            return;
        }

        foreach (var (job, held) in _held.OrderBy(one => one.Value.AskedAt).Take(_held.Count - MostHeld))
        {
            if (held.IsIdle)
            {
                _held.TryRemove(new KeyValuePair<string, HeldJob>(job, held));
            }
        }
    }
}
