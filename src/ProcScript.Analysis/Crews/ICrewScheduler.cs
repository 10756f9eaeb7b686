namespace ProcScript.Analysis.Crews;

/// <summary>Finds out who does what when, so that a job is done soon.</summary>
public interface ICrewScheduler
{
    /// <summary>A schedule of <paramref name="problem"/> that keeps to all of it; the same each time for the same problem.</summary>
    CrewSchedule Schedule(CrewProblem problem);
}
