using System.Collections.Immutable;
using System.Globalization;
using CsCheck;
using ProcScript.Analysis.Crews;

namespace ProcScript.Analysis.Tests.Crews;

public class RoomTests
{
    private static readonly ListScheduler Quick = new(400);

    [Fact]
    public void Two_who_could_work_at_once_take_turns_in_a_place_for_one()
    {
        var report = Covers("place pit \"pit\" room for 1", "in pit", "in pit");
        var plan = report.CreateCrewPlan(new CrewSize(2), Quick)!;
        AssertRoom(plan);
        Assert.Equal(("pit", 1), (plan.Places.Single().Title, plan.Places.Single().Room));
        Assert.Equal([1, 2, 3, 4, 5, 6, 7, 8], plan.Places.Single().Steps);
        Assert.Equal(plan.OnePerson, plan.Seconds);
        Assert.True(Covers("place pit \"pit\" room for 1", "in pit", "").CreateCrewPlan(new CrewSize(2), Quick)!.Seconds < plan.Seconds);
        Assert.Empty(Covers("place pit \"pit\" room for 2", "in pit", "in pit").CreateCrewPlan(new CrewSize(2), Quick)!.Places);
    }

    [Fact]
    public void A_place_holds_for_what_lies_within_and_for_its_joints_but_not_on_the_bench()
    {
        var plan = Checked.Text(
            """
            clip pin "push pin"
            machine m "m" {
              place pit "pit" room for 1
              place bay "bay" room for 2
              part box "box" {
                in pit
                held by 2 pin as box_pins
                held by 2 pin as rear_pins { in bay }
                part lamp "lamp" { held by 2 pin as lamp_pins covered by 1 pin as cap }
                part fan "fan" { in none  held by 2 pin as fan_pins }
                part core "core" { held by 2 pin as core_pins }
              }
            }
            procedure p "p" on m {
              goal remove core
              stage "s" { release cap release lamp_pins remove lamp release fan_pins remove fan release box_pins release rear_pins remove box release core_pins remove core }
              work { task "Look." { in bay } }
            }
            """).Only.CreatePlan()!;
        Assert.Equal(
            ["pit", "pit", "pit", "", "", "pit", "bay", "pit", "", "", "bay", "", "", "pit", "bay", "pit", "", "", "pit", "pit", "pit"],
            plan.Strip.Append(plan.Work).Concat(plan.Refit).SelectMany(stage => stage.Steps).Select(step => step.Place));
    }

    [Fact]
    public void A_plan_never_has_more_people_in_a_place_than_there_is_room_for() => Gen.Select(Gen.Int[0, 2].Array[2, 6], Gen.Int[1, 2], Gen.Int[2, 4]).Sample(
        (places, room, people) =>
        {
            var parts = places.Select((place, at) => string.Create(
                CultureInfo.InvariantCulture,
                $"part p{at} \"part {at}\" {{ {(place == 0 ? "" : $"in place{place}")}  held by {at + 1} pin as pins{at} {{ time 20 s }} }}"));
            var steps = places.Select((_, at) => string.Create(CultureInfo.InvariantCulture, $"release pins{at} remove p{at}{(at % 3 == 2 ? " { people 2 }" : "")}"));
            var goals = places.Select((_, at) => string.Create(CultureInfo.InvariantCulture, $"goal remove p{at}"));
            var text = string.Create(
                CultureInfo.InvariantCulture,
                $"clip pin \"push pin\" machine m \"m\" {{ place place1 \"first\" room for {room} place place2 \"second\" room for 1 {string.Join('\n', parts)} }} "
                    + $"procedure p \"p\" on m {{ {string.Join('\n', goals)} stage \"s\" {{ {string.Join('\n', steps)} }} }}");
            AssertRoom(Checked.Text(text).Only.CreateCrewPlan(new CrewSize(people), Quick)!);
        },
        iter: Depth.Of(60));

    [Fact]
    public void People_who_keep_to_what_they_wait_for_are_never_too_many_however_quick_or_slow_they_are() => Gen.Select(
        Gen.Select(Gen.Int[1, 9], Gen.Int[0, 2], Gen.Int[1, 2], Gen.Int[1, 20]).Array[2, 14], Gen.Int[1, 3], Gen.Int[3, 5]).Sample(
        (rows, room, people) =>
        {
            var problem = new CrewProblem(
                [.. rows.Select(row => new CrewTask(row.Item1, row.Item1, row.Item3) { Uses = row.Item2 == 0 ? [] : [new CrewUse(row.Item2 - 1, Math.Min(row.Item3, row.Item2 == 1 ? room : 2))] })],
                people)
            {
                Capacities = [room, 2],
            };
            var schedule = Quick.Schedule(problem);
            Assert.Empty(CrewCheck.Failures(problem, schedule));
            var order = new CrewOrder(problem, schedule);
            var (starts, ends) = (new int[rows.Length], new int[rows.Length]);
            foreach (var task in order.Tasks)
            {
                starts[task] = Enumerable.Range(0, rows.Length).Where(other => order.IsBefore(other, task)).Select(other => ends[other]).DefaultIfEmpty(0).Max();
                ends[task] = starts[task] + rows[task].Item4;
            }

            foreach (var moment in starts)
            {
                for (var resource = 0; resource < 2; resource++)
                {
                    var used = Enumerable.Range(0, rows.Length).Where(task => starts[task] <= moment && moment < ends[task])
                        .Sum(task => problem.Tasks[task].Uses.Where(use => use.Resource == resource).Sum(use => use.Amount));
                    Assert.True(used <= problem.Capacities[resource]);
                }
            }
        },
        iter: Depth.Of(400));

    private static ProcedureReport Covers(string place, string left, string right) => Checked.Text(
        $$"""
        clip pin "push pin"
        machine m "m" {
          {{place}}
          part left "left cover" { {{left}}  held by 4 pin as left_pins { time 60 s } }
          part right "right cover" { {{right}}  held by 4 pin as right_pins { time 60 s } }
        }
        procedure p "p" on m {
          goal remove left  goal remove right
          stage "s" { release left_pins remove left release right_pins remove right }
        }
        """).Only;

    /// <summary>At the start of each step no place that keeps anybody out has more people in it than room; who lends a hand from outside is not in it.</summary>
    private static void AssertRoom(CrewPlan plan)
    {
        foreach (var place in plan.Places)
        {
            var inside = plan.Steps.Where(step => place.Steps.Contains(step.Step)).ToImmutableArray();
            foreach (var moment in inside.Select(step => step.Start))
            {
                var people = inside.Where(step => step.Start <= moment && moment < step.Free).Sum(step => Math.Min(place.Room, step.People.Length));
                Assert.True(people <= place.Room, $"{people} people in the {place.Title} at {moment}");
            }
        }
    }
}
