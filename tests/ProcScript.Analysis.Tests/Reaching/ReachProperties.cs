using System.Collections.Immutable;
using CsCheck;
using ProcScript.Analysis.Actions;
using ProcScript.Analysis.Machines;
using ProcScript.Analysis.Reaching;
using ProcScript.Analysis.States;
using ProcScript.Analysis.Tests.Properties;
using ProcScript.Model;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Sources;

namespace ProcScript.Analysis.Tests.Reaching;

/// <summary>What <c>reach</c> finds on random small machines with alternatives, against all states that the machine can be in.</summary>
public sealed class ReachProperties
{
    [Fact]
    public void What_is_found_costs_as_much_as_the_best_of_all_states_and_is_proven()
    {
        var (proved, gaps, none, choices) = (0, 0, 0, 0);
        Gen.Select(Gen.Int[1, 5], Gen.UInt, Gen.UInt).Sample(
            seed =>
            {
                var (library, machine) = Bind(seed.Item1, seed.Item2);
                if (machine.Parts.Any(part => part.IsTemporary))
                {
                    return;
                }

                var items = Asked(machine, seed.Item3);
                var job = new ReachJob(library, new MachineFacts(machine), items, ReachPurpose.Remove);
                var search = ReachSearch.Of(library, job, ReachWeights.TimeAlone, 1_000_000, runnersUp: 2);
                var brute = Brute(library, job, items);
                var text = RandomMachine.Text(RandomMachine.Declarations(seed.Item1, seed.Item2));
                if (brute.GaveUp)
                {
                    return;
                }

                if (brute.Best is not { } best)
                {
                    Interlocked.Increment(ref none);
                    // Brute force sets each control once on the way off; a way that sets one to and fro is beyond it, and is proven by being performed.
                    Assert.True(search.Best is null || search.Best.Strip.Actions.Where(action => action.Verb == Verb.Set).CountBy(action => action.Target!).Any(sets => sets.Value > 1), text);
                    return;
                }

                Assert.True(search.Bound <= best.Cost + Rounding, $"the bound {search.Bound} is above {best.Cost} of {Told(best)}, found {Told(search.Best)}\n{text}");
                if (search.Best is { } found && search.Bound >= found.Cost - Rounding)
                {
                    Assert.True(Math.Abs(found.Cost - best.Cost) < Rounding, $"{found.Cost} of {Told(found)} is not {best.Cost} of {Told(best)}\n{text}");
                    Assert.All(search.RunnersUp, way => Assert.True(way.Cost >= best.Cost - Rounding));
                    Interlocked.Increment(ref proved);
                    Interlocked.Add(ref choices, found.Nodes.Count(node => search.Problem!.Clauses[node].Any(clause => clause.Length > 1)));
                }
                else
                {
                    Interlocked.Increment(ref gaps);
                }
            },
            iter: Depth.Of(3_000, few: 60));
        Assert.True(proved > Depth.Of(400, few: 8) && choices > Depth.Of(200, few: 0), $"only {proved} were proved the cheapest, with {choices} choices");
        Assert.True(gaps * 20 < proved, $"{gaps} were left open beside {proved}");
        TestContext.Current.SendDiagnosticMessage($"proved {proved}, open {gaps}, none {none}, choices {choices}");
    }

    [Fact]
    public void What_is_written_is_proven_as_a_file_of_the_library()
    {
        var written = 0;
        Gen.Select(Gen.Int[1, 9], Gen.UInt, Gen.UInt).Sample(
            seed =>
            {
                var (library, machine) = Bind(seed.Item1, seed.Item2);
                var item = Asked(machine, seed.Item3)[0];
                ReachReport report;
                try
                {
                    report = LibraryReach.Find(library, CheckSettings.Usual, new ReachRequest([item.Name], ReachPurpose.Replace));
                }
                catch (ReachRefusedException)
                {
                    return;
                }

                var store = MemorySourceStore.Of("x.proc", RandomMachine.Text(RandomMachine.Declarations(seed.Item1, seed.Item2)));
                Assert.Contains("use \"x.proc\"", DraftedProcedure.File(store, CheckSettings.Usual, "y.proc", report.Draft, report.Uses), StringComparison.Ordinal);
                Interlocked.Increment(ref written);
            },
            iter: Depth.Of(800, few: 60));
        Assert.True(written > Depth.Of(200, few: 10), $"only {written} were written");
    }

    private const double Rounding = 1e-6;

    private static string Told(ReachWay? way) => way is null ? "nothing" : string.Join(", ", Checked.Lines(way.Strip.Actions).Concat(Checked.Lines(way.Refit.Actions)));

    private static (Library Library, Machine Machine) Bind(int parts, uint seed)
    {
        var library = LibraryBinder.Bind(
            MemorySourceStore.Of("x.proc", RandomMachine.Text(RandomMachine.Declarations(parts, seed))), TestContext.Current.CancellationToken);
        return (library, Assert.Single(library.Machines));
    }

    /// <summary>A part, or one and another, or a joint.</summary>
    private static ImmutableArray<MachineItem> Asked(Machine machine, uint seed)
    {
        var parts = machine.Parts.Where(part => !part.IsTemporary).ToList();
        var joints = machine.Joints.Where(joint => !joint.IsTemporary).ToList();
        if (parts.Count == 0)
        {
            return [machine.Parts[0]];
        }

        MachineItem first = seed % 4 == 0 && joints.Count > 0 ? joints[(int)(seed / 4 % joints.Count)] : parts[(int)(seed / 4 % parts.Count)];
        return seed % 4 == 1 ? [.. new[] { first, parts[(int)(seed / 64 % parts.Count)] }.Distinct()] : [first];
    }

    private static (ReachWay? Best, bool GaveUp) Brute(Library library, ReachJob job, ImmutableArray<MachineItem> items)
    {
        ReachWay? best = null;
        var costs = job.Costs(ReachWeights.TimeAlone);
        var brute = new BruteReach(job.Facts.Machine, costs, state => items.All(item => state[item] == (item is Part ? (int)PartPlace.Out : 0)));
        foreach (var (cost, moves) in brute.Find())
        {
            if (cost >= best?.Cost)
            {
                break;
            }

            var actions = moves.Select(move => new ActionRequest(move.Verb, move.Item, move.Value));
            if (ReachWay.Prove(library, job, costs, actions, []) is { } way && !(way.Cost >= best?.Cost))
            {
                best = way;
            }
        }

        return (best, brute.GaveUp);
    }
}
