using CsCheck;
using ProcScript.Analysis.Following;
using ProcScript.Analysis.States;
using ProcScript.Jobs.Closing;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Replays;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Jobs.Tests;

/// <summary>Jobs that go otherwise than planned, at random.</summary>
public sealed class DeviationProperties
{
    private static readonly JobCourse[] Courses = [.. DemoJobs.All.Select(report => JobCourse.Of(report)!).OrderBy(course => course.Steps.Length).Take(12)];

    /// <summary>A number that chooses what happens next, and one that says how.</summary>
    private static readonly Gen<(int Course, (int What, int Which)[] Events)> Job =
        Gen.Select(Gen.Int[0, Courses.Length - 1], Gen.Select(Gen.Int[0, 99], Gen.Int[0, 9_999]).Array[0, 90]);

    [Fact]
    public void The_machine_stands_as_an_independent_count_says()
    {
        Job.Sample(
            job =>
            {
                var replay = DemoJobs.Begin(Courses[job.Course]);
                var count = new PlainMachine(replay.Course.Machine);
                foreach (var told in job.Events)
                {
                    replay = Happen(replay, count, told.What, told.Which);
                }

                count.AssertIs(replay.Machine.State);
                var again = JobReplay.Of(Courses[job.Course], [.. replay.Events]);
                Assert.Empty(again.Machine.State.Differences(replay.Machine.State));
                Assert.Equal(replay.Deviations.Select(one => one.Text), again.Deviations.Select(one => one.Text));
            },
            iter: Depth.Of(1_200));
    }

    [Fact]
    public void A_job_may_be_closed_only_where_the_machine_is_whole()
    {
        Job.Sample(
            job =>
            {
                var replay = DemoJobs.Begin(Courses[job.Course]);
                var count = new PlainMachine(replay.Course.Machine);
                foreach (var told in job.Events)
                {
                    replay = Happen(replay, count, told.What, told.Which);
                }

                var isOpen = JobClosing.Open(replay).Length > 0;
                Assert.True(isOpen || count.IsWhole(replay.Course), "the machine is not whole, and nothing says so");
                Assert.True(isOpen || replay.Extra.Count == 0, "pieces are left over, and nothing says so");
            },
            iter: Depth.Of(1_200));
    }

    [Fact]
    public void From_wherever_a_job_stands_the_way_that_is_found_leads_home()
    {
        var (found, none) = (0, 0);
        Job.Sample(
            job =>
            {
                var replay = DemoJobs.Begin(Courses[job.Course]);
                var count = new PlainMachine(replay.Course.Machine);
                foreach (var told in job.Events)
                {
                    replay = Happen(replay, count, told.What, told.Which);
                }

                if (replay.Machine.WayHome() is not { } way)
                {
                    Interlocked.Increment(ref none);
                    return;
                }

                Interlocked.Increment(ref found);
                ReplayTests.AssertLeadsHome(replay, way);
                AssertBagsKeepTheirNumbers(replay.Course, way);
            },
            iter: Depth.Of(600));

        TestContext.Current.SendDiagnosticMessage($"{found} ways home were found, and {none} times none was");
        // A way home is found from about five of six.
        Assert.True(found > 2 * none, $"{found} ways home were found, and {none} times none was");
    }

    /// <summary>What has a label keeps it.</summary>
    private static void AssertBagsKeepTheirNumbers(JobCourse before, JobCourse after)
    {
        var labelled = before.Steps.Where(step => step.Phase != CoursePhase.Refit && step.Line.Bags.Length == 1 && step.Target is Joint)
            .ToLookup(step => step.Target!.Name, step => step.Line.Bags[0]);
        foreach (var step in after.Steps.Where(step => step.Line.Bags.Length == 1 && step.Target is Joint && labelled.Contains(step.Target.Name)))
        {
            Assert.Contains(step.Line.Bags[0], labelled[step.Target!.Name]);
        }
    }

    /// <summary>Something happens: mostly the next step of the cards, now and then a later one, another count, or something that nobody planned.</summary>
    private static JobReplay Happen(JobReplay replay, PlainMachine count, int what, int which)
    {
        switch (what)
        {
            case < 70 when replay.Next().FirstOrDefault() is { } next:
                count.Do(next, next.Count);
                return replay.Do(next.Number);
            case < 80:
                var left = replay.Course.Steps.Where(step => !replay.Done.ContainsKey(step.Number)).ToList();
                if (left.Count == 0)
                {
                    return replay;
                }

                var ahead = left[which % Math.Min(left.Count, 6)];
                count.Do(ahead, ahead.Count);
                return replay.Do(ahead.Number);
            case < 88 when replay.Next().FirstOrDefault(step => step.Count > 1) is { } counted:
                count.Do(counted, counted.Count - 1);
                return replay.Do(counted.Number, counted.Count - 1);
            case < 94 when replay.Done.Values.LastOrDefault(done => done.Event is not null) is { Event.Step: { } last }:
                count.Undo(replay.Done[last].Changes);
                return replay.With(DemoJobs.Next(replay, EventKind.Undone) with { Step = last });
            default:
                var joints = replay.Course.Machine.Joints.Where(joint => !joint.IsTemporary).ToList();
                var joint = joints[which % joints.Count];
                var (verb, word) = Opening(joint, which % 2 == 0);
                if (which % 2 != 0 && !replay.Machine.Missing(verb, joint, 1).IsEmpty)
                {
                    // Nobody plugs in what is in his other hand: what cannot be closed there is not.
                    return replay;
                }

                count.Do(joint, verb, 1);
                return replay.With(DemoJobs.Next(replay, EventKind.Did) with { Verb = word, Item = joint.Name, Count = 1 });
        }
    }

    private static (Verb Verb, string Word) Opening(Joint joint, bool opens)
    {
        Verb[] candidates = opens ? [Verb.Undo, Verb.Release, Verb.Unplug, Verb.Disconnect, Verb.Cut] : [Verb.Fasten, Verb.Engage, Verb.Plug, Verb.Connect, Verb.Renew];
        var verb = candidates.First(one => TrueMachine.Suits(one, joint));
        return (verb, verb.ToString().ToLowerInvariant());
    }

    /// <summary>A machine as somebody would count it on fingers: what is on, what is out. It knows nothing of how the product keeps its states.</summary>
    private sealed class PlainMachine(Machine machine)
    {
        private readonly Dictionary<string, int> _on = machine.Joints.ToDictionary(joint => joint.Name, joint => joint.IsTemporary ? 0 : joint.Count);
        private readonly Dictionary<string, int> _place = machine.Parts.ToDictionary(part => part.Name, part => part.IsTemporary ? 2 : 0);
        private readonly HashSet<string> _isolated = [];
        private readonly HashSet<string> _empty = [];

        public void Do(CourseStep step, int count)
        {
            Do(step.Target, step.Verb, step.Target is Joint ? count : 0);
            if (step is { Target: Part part, Verb: Verb.Fit or Verb.Return })
            {
                // What stood aside before it came off goes back aside.
                _place[part.Name] = step.Changes.First(change => change.Variable.Kind == StateKind.Place).After;
            }
        }

        public void Do(MachineItem? item, Verb verb, int count)
        {
            switch (item)
            {
                case Joint joint when verb is Verb.Undo or Verb.Release or Verb.Unplug or Verb.Disconnect or Verb.Cut:
                    _on[joint.Name] = Math.Max(0, _on[joint.Name] - count);
                    break;
                case Joint joint when verb is Verb.Fasten or Verb.Engage or Verb.Plug or Verb.Connect or Verb.Renew or Verb.Snug:
                    _on[joint.Name] = Math.Min(joint.Count, _on[joint.Name] + count);
                    break;
                case Part part when verb is Verb.Remove:
                    _place[part.Name] = 2;
                    break;
                case Part part when verb is Verb.Aside:
                    _place[part.Name] = 1;
                    break;
                case Part part when verb is Verb.Fit or Verb.Return:
                    _place[part.Name] = 0;
                    break;
                case Energy energy when verb is Verb.Isolate or Verb.Verify:
                    _isolated.Add(energy.Name);
                    break;
                case Energy energy when verb is Verb.Restore:
                    _isolated.Remove(energy.Name);
                    break;
                case Fluid fluid when verb is Verb.Empty:
                    _empty.Add(fluid.Name);
                    break;
                case Fluid fluid when verb is Verb.Fill:
                    _empty.Remove(fluid.Name);
                    break;
            }
        }

        /// <summary>Takes back what a step changed; how much that was only the step knows.</summary>
        public void Undo(IEnumerable<StateChange> changes)
        {
            foreach (var change in changes.Reverse())
            {
                switch (change.Variable.Kind)
                {
                    case StateKind.Attached:
                        var joint = machine.Joints[change.Variable.Index];
                        _on[joint.Name] = Math.Clamp(_on[joint.Name] + change.Before - change.After, 0, joint.Count);
                        break;
                    case StateKind.Place:
                        _place[machine.Parts[change.Variable.Index].Name] = change.Before;
                        break;
                    case StateKind.Live:
                        _ = change.Before == (int)EnergyState.Live ? _isolated.Remove(machine.Energies[change.Variable.Index].Name) : _isolated.Add(machine.Energies[change.Variable.Index].Name);
                        break;
                    case StateKind.Full:
                        _ = change.Before == 1 ? _empty.Remove(machine.Fluids[change.Variable.Index].Name) : _empty.Add(machine.Fluids[change.Variable.Index].Name);
                        break;
                }
            }
        }

        public void AssertIs(MachineState state)
        {
            Assert.All(machine.Joints, joint => Assert.Equal((joint.Name, _on[joint.Name]), (joint.Name, state.Attached(joint))));
            Assert.All(machine.Parts, part => Assert.Equal((part.Name, _place[part.Name]), (part.Name, (int)state.Place(part))));
            Assert.All(machine.Energies, energy => Assert.Equal(_isolated.Contains(energy.Name), state[new StateVariable(StateKind.Live, energy.Index)] != (int)EnergyState.Live));
            Assert.All(machine.Fluids, fluid => Assert.Equal(_empty.Contains(fluid.Name), state[new StateVariable(StateKind.Full, fluid.Index)] == 0));
        }

        /// <summary>Whether all is on and in that goes back.</summary>
        public bool IsWhole(JobCourse course)
        {
            var gone = course.Plan.Discards.Length > 0;
            return _isolated.Count == 0 && _empty.Count == 0
                && (gone || (machine.Joints.All(joint => _on[joint.Name] == (joint.IsTemporary ? 0 : joint.Count)) && machine.Parts.All(part => _place[part.Name] == (part.IsTemporary ? 2 : 0))));
        }
    }
}
