using System.Text;
using ProcScript.Analysis;
using ProcScript.Analysis.Following;
using ProcScript.Jobs.Freezing;
using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Learning;
using ProcScript.Jobs.Replays;

namespace ProcScript.Jobs.Tests.Learning;

/// <summary>A small library, and jobs that were done by it.</summary>
/// <param name="text">Its one file.</param>
internal sealed class Shop(string text)
{
    public const string Tank = """
        tool socket_13 "13 mm socket" { size 13 mm }
        tool step_stool "step stool"
        supply cleaner "contact cleaner"
        clip pin "push pin" { tool socket_13  spare 10 %  time 3 s }
        connector two "2-way plug" { on none }
        fastener m8 "M8 bolt" { thread M8x1.25  drive socket_13  torque 20 ± 2 N.m  grade 8.8 }
        machine tank "water tank" {
          part lid "lid" { mass 2 kg  held by 4 m8 as lid_bolts { pattern none } }
          part pump "pump" { mass 2 kg  behind lid  held by 3 pin as pump_pins  wired by 1 two as pump_plug }
          each side in left, right {
            part foot[side] "{side} foot" { mass 1 kg  behind lid  held by 2 pin as foot_pins[side] }
          }
        }

        procedure pump_out "Take the pump out" on tank {
          goal remove pump
          stage "Lid" {
            undo lid_bolts
            remove lid { people 2 }
          }
          stage "Pump" {
            unplug pump_plug
            release pump_pins
            remove pump
          }
        }

        procedure feet_out "Take the feet out" on tank {
          goal remove foot[left]
          stage "Lid" { strip lid }
          stage "Feet" {
            each side in left, right { release foot_pins[side] }
            remove foot[left]
            remove foot[right]
          }
        }

        """;

    private const string Path = "tank.proc";

    public static readonly DateTimeOffset Morning = new(2026, 3, 2, 8, 0, 0, TimeSpan.FromHours(1));

    public FrozenLibrary Store { get; } = new(new Dictionary<string, byte[]> { [Path] = Encoding.UTF8.GetBytes(text) });

    public JobCourse Course(string job)
    {
        var report = LibraryCheck.Run(Store).Procedures.Single(one => one.Procedure.Job == job);
        return JobCourse.Of(report) ?? throw new InvalidOperationException($"{job} is not proven: {string.Join("; ", LibraryCheck.Run(Store).Findings.Select(found => found.Finding.Message))}");
    }

    /// <summary>A job: what happens, each with the seconds that it took.</summary>
    public static SeenJob Job(string name, JobCourse course, IEnumerable<(double Seconds, JobEvent Event)> told) => SeenJob.Of(name, Replay(course, told));

    public static JobReplay Replay(JobCourse course, IEnumerable<(double Seconds, JobEvent Event)> told)
    {
        var events = new List<JobEvent> { DemoJobs.Opened(course) with { Number = 1 } };
        var at = Morning;
        foreach (var (seconds, happened) in told)
        {
            at = at.AddSeconds(seconds);
            events.Add(happened with { Id = $"e{events.Count + 1}", Number = events.Count + 1, At = at, Plan = course.Plan.Revision });
        }

        return JobReplay.Of(course, events);
    }

    public static JobEvent Event(EventKind kind, string by = "Kern") => new() { Id = "", Kind = kind, At = default, By = by };

    public static (double Seconds, JobEvent Event) Done(double seconds, int step, string by = "Kern") => (seconds, Event(EventKind.Done, by) with { Step = step });

    /// <summary>Every step after the first in so many seconds.</summary>
    public static IEnumerable<(double Seconds, JobEvent Event)> All(JobCourse course, Func<CourseStep, double> seconds) =>
        course.Steps.Select(step => Done(seconds(step), step.Number));

    public LearnReport Learn(IEnumerable<SeenJob> jobs, int atLeast = 3) => Lessons.Of(jobs, Store, CheckSettings.Usual, new LearnRequest { AtLeast = atLeast });

    /// <summary>The shop once it has written what it learned.</summary>
    public Shop After(LearnReport report) => new(report.Texts.Files.SingleOrDefault()?.After ?? Text);

    public string Text => text;
}
