using System.Collections.Immutable;
using CsCheck;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Reaching;
using ProcScript.Analysis.Reaching.Visits;
using ProcScript.Analysis.States;
using ProcScript.Analysis.Tests.Properties;
using ProcScript.Model;
using ProcScript.Model.Machines;
using ProcScript.Model.Sources;

namespace ProcScript.Analysis.Tests.Reaching;

/// <summary>Two or three random jobs on random small machines with alternatives in one visit, against all states that their steps can lead to.</summary>
public sealed class VisitProperties
{
    private const double Rounding = 1e-6;

    /// <summary>How long a job may wander about before it has what it is for.</summary>
    private const int MostSteps = 60;

    /// <summary>How many other orders of the cheapest steps are tried where the way back costs more than it need.</summary>
    private const int MostOrders = 30;

    [Fact]
    public void A_visit_costs_as_much_as_the_best_of_all_orders_and_choices_of_its_steps_and_is_proven()
    {
        var (proved, open, shared, leftOut, missed) = (0, 0, 0, 0, 0);
        var openTold = new List<string>();
        Gen.Select(Gen.Int[2, 6], Gen.UInt, Gen.UInt).Sample(
            seed =>
            {
                var random = new Random((int)seed.Item3);
                var declarations = RandomMachine.Declarations(seed.Item1, seed.Item2);
                var bare = Sample.Bind(declarations);
                var jobs = Enumerable.Range(0, random.Next(2, 4)).Select(_ => RandomJob(bare, random)).OfType<List<Move>>().ToList();
                var text = RandomMachine.Text(declarations) + string.Concat(jobs.Select((job, place) => Text(place, job)));
                var library = LibraryBinder.Bind(MemorySourceStore.Of("x.proc", text), TestContext.Current.CancellationToken);
                Assert.Empty(library.Findings.Select(finding => $"{finding.Rule.Code} {finding.Message}"));
                var machine = Assert.Single(library.Machines);
                var facts = new MachineFacts(machine);
                var names = library.Procedures.Where(procedure => Visit.Of(library, facts, procedure) is not null).Select(procedure => procedure.Job).ToImmutableArray();
                if (names.Length < 2 || machine.Parts.Any(part => part.IsTemporary) || Brute(library, machine, [.. names.Select(name => jobs[int.Parse(name[3..], System.Globalization.CultureInfo.InvariantCulture)])]) is not { } best)
                {
                    return;
                }

                var report = LibraryTogether.Find(library, CheckSettings.Usual, names);

                Assert.True(report.Bound <= best + Rounding, $"the bound {report.Bound} is above {best}\n{text}");
                if (report.Cost < best - Rounding)
                {
                    // So many orders of so many steps are not all gone through: then the naive machine has to be able to do what was found.
                    AssertWorks(library, machine, names, report.Cost, text);
                    Interlocked.Increment(ref missed);
                    return;
                }

                Assert.Equal(report.IsCheapest, report.Bound >= report.Cost - Rounding);
                if (!report.IsCheapest)
                {
                    Interlocked.Increment(ref open);
                    lock (openTold)
                    {
                        openTold.Add($"{report.Bound} to {report.Cost}, best {best}\n{text}");
                    }

                    return;
                }

                Assert.True(Math.Abs(report.Cost - best) < Rounding, $"{report.Cost} is not {best}\n{text}");
                Interlocked.Increment(ref proved);
                Interlocked.Add(ref shared, report.Saved > Rounding ? 1 : 0);
                Interlocked.Add(ref leftOut, report.LeftOut.IsEmpty ? 0 : 1);
            },
            iter: Depth.Of(6_000, few: 120));
        TestContext.Current.SendDiagnosticMessage($"proved {proved}, open {open}, with something saved {shared}, with something left out {leftOut}, missed by brute force {missed}\n{string.Join('\n', openTold.Take(3))}");
        Assert.True(proved > Depth.Of(1_000, few: 10) && shared * 4 > proved && (leftOut * 40 > proved || !Depth.IsWhole), $"only {proved} were proved the quickest, of which {shared} saved and {leftOut} left out something");
        // Of 6,000 samples brute force missed 2 and 14 were left open beside 2,185: in a plain run, a few of either beside forty are chance.
        Assert.True(missed <= 2 + (proved / 100), $"brute force missed {missed} beside {proved}");
        Assert.True(open <= 5 + (proved / 50), $"{open} were left open beside {proved}\n{string.Join('\n', openTold.Take(3))}");
    }

    private static void AssertWorks(Library library, Machine machine, ImmutableArray<string> names, double cost, string text)
    {
        var facts = new MachineFacts(machine);
        var jobs = names.Select(name => new VisitJob(Visit.Of(library, facts, library.Procedures.Single(procedure => procedure.Job == name))!)).ToImmutableArray();
        var best = VisitSearch.Of(library, facts, jobs, 20_000_000).Best!;
        Assert.Equal(cost, best.Cost);
        var naive = new NaiveMachine(machine);
        Assert.True(Sample.CanDo(naive, best.Strip.Actions.Select(Sample.MoveOf), refit: false), text);
        Assert.All(jobs, job => Assert.Equal(PartPlace.Out, naive.Place((Part)job.Procedure.Goals[0].Target)));
        Assert.True(Sample.CanDo(naive, best.Refit.Actions.Select(Sample.MoveOf), refit: true), text);
        Assert.Equal(new NaiveMachine(machine).Describe(), naive.Describe());
    }

    /// <summary>Wanders about until a part is out, then forgets what that did not need; null where it does not come out.</summary>
    private static List<Move>? RandomJob(Machine machine, Random random)
    {
        var parts = machine.Parts.Where(part => !part.IsTemporary).ToList();
        if (parts.Count == 0)
        {
            return null;
        }

        var goal = parts[random.Next(parts.Count)];
        var costs = new ReachCosts(new MachineFacts(machine), (_, _) => Model.Procedures.ActionDetails.None, ReachWeights.TimeAlone, []);
        var all = BruteReach.Moves(machine, costs).Select(one => one.Move).ToList();
        var (naive, walk) = (new NaiveMachine(machine), new List<Move>());
        while (naive.Place(goal) != PartPlace.Out)
        {
            var moves = all.Where(move => naive.Can(move, refit: false)).ToList();
            if (moves.Count == 0 || walk.Count == MostSteps)
            {
                return null;
            }

            walk.Add(moves[random.Next(moves.Count)]);
            naive.Do(walk[^1]);
        }

        // One step, or two: a control that is moved to and fro for nothing stands where it stood.
        while (Shorter(machine, goal, walk) is { } shorter)
        {
            walk = shorter;
        }

        return walk;
    }

    private static List<Move>? Shorter(Machine machine, Part goal, List<Move> walk) => (
        from later in Enumerable.Range(0, walk.Count).Reverse()
        from earlier in Enumerable.Range(0, later + 1).Reverse()
        where earlier == later || (walk[earlier].Item == walk[later].Item && walk[later].Item is Control)
        let without = walk.Where((_, place) => place != earlier && place != later).ToList()
        let naive = new NaiveMachine(machine)
        where Sample.CanDo(naive, without, refit: false) && naive.Place(goal) == PartPlace.Out
        select without).FirstOrDefault();

    private static string Text(int place, List<Move> moves) =>
        $"procedure job{place} \"Job {place}\" on m {{\ngoal remove {moves[^1].Item.Name}\nstage \"S\" {{\n{string.Concat(moves.Select(move => RandomStrip.Print(move) + "\n"))}}}\n}}\n";

    /// <summary>What the quickest visit costs that has only what the jobs do, takes off what they are for, and makes safe whatever they make safe.</summary>
    private static double? Brute(Library library, Machine machine, List<List<Move>> jobs)
    {
        var told = jobs.SelectMany(job => job).Select(RandomStrip.Print).ToHashSet(StringComparer.Ordinal);
        var safe = machine.Energies.Concat<MachineItem>(machine.Fluids).Where(item => jobs.Any(job => job.Any(move => move.Item.Name == item.Name))).ToList();
        var items = machine.Parts.Where(part => jobs.Any(job => job[^1].Item.Name == part.Name)).ToImmutableArray<MachineItem>();
        var job = new ReachJob(library, new MachineFacts(machine), items, ReachPurpose.Remove);
        var costs = job.Costs(ReachWeights.TimeAlone);
        var brute = new BruteReach(
            machine,
            costs,
            state => items.All(item => state[item] == (int)PartPlace.Out) && safe.TrueForAll(item => state[item] == 0),
            move => told.Contains(RandomStrip.Print(move)))
        {
            Ways = 3,
        };
        double? best = null;
        foreach (var (cost, moves) in brute.Find())
        {
            if (cost >= best)
            {
                break;
            }

            // Of the ways to one state it is told the first; the way back may be cheaper after another.
            foreach (var order in Orders(machine, moves))
            {
                if (ReachWay.Prove(library, job, costs, order.Select(move => new ActionRequest(move.Verb, move.Item, move.Value)), []) is { } way && !(way.Cost >= best))
                {
                    best = way.Cost;
                    if (best <= cost + Rounding)
                    {
                        break;
                    }
                }
            }
        }

        return brute.GaveUp ? null : best;
    }

    /// <summary>Moves in the given order, and in some at random.</summary>
    private static IEnumerable<IReadOnlyList<Move>> Orders(Machine machine, IReadOnlyList<Move> moves)
    {
        yield return moves;
        var random = new Random(moves.Count);
        for (var trial = 0; trial < MostOrders; trial++)
        {
            var (left, order, naive) = (moves.ToList(), new List<Move>(), new NaiveMachine(machine));
            while (left.Where(move => naive.Can(move, refit: false)).ToList() is { Count: > 0 } possible)
            {
                order.Add(possible[random.Next(possible.Count)]);
                naive.Do(order[^1]);
                left.Remove(order[^1]);
            }

            if (left.Count == 0)
            {
                yield return order;
            }
        }
    }
}
