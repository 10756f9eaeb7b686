using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Procedures;
using ProcScript.Model.Rules.Procedures;

namespace ProcScript.Model.Binding.Procedures;

/// <summary>Steps in order, with each alert bound to the step after it.</summary>
internal sealed class StepList(FindingSink sink)
{
    private readonly ImmutableArray<Step>.Builder _steps = ImmutableArray.CreateBuilder<Step>();
    private readonly PendingAlerts _alerts = new(sink);

    /// <summary>Takes an alert for the step to come.</summary>
    public void Add(Alert alert, Guards guards) => _alerts.Add(alert, guards);

    /// <summary>Takes a step; null for one whose finding is reported, which takes its alerts along.</summary>
    public void Add(Step? step)
    {
        var alerts = _alerts.Take(step is { } taken && !Verbs.AreUndone(taken.Verb));
        if (step is not null)
        {
            _steps.Add(alerts.IsEmpty ? step : step with { Alerts = alerts });
        }
    }

    /// <summary>The steps; an alert that no step follows is a finding.</summary>
    public ImmutableArray<Step> Close()
    {
        _alerts.ReportLeft();
        return _steps.ToImmutable();
    }
}

/// <summary>Alerts that wait for what they stand before.</summary>
internal sealed class PendingAlerts(FindingSink sink)
{
    private readonly List<(Alert Alert, Guards Guards)> _pending = [];

    /// <summary>Takes an alert.</summary>
    public void Add(Alert alert, Guards guards) => _pending.Add((alert, guards));

    /// <summary>Gives the alerts to what comes next; where nothing undoes that, one for the refit alone stands before nothing.</summary>
    public ImmutableArray<Alert> Take(bool isForGood = false)
    {
        if (_pending.Count == 0)
        {
            return [];
        }

        if (isForGood)
        {
            foreach (var (alert, guards) in _pending.Where(one => !one.Alert.IsOfStrip))
            {
                sink.Report(AlertWithoutStep.InTheRefit(alert), guards);
            }
        }

        ImmutableArray<Alert> alerts = [.. _pending.Select(one => one.Alert)];
        _pending.Clear();
        return alerts;
    }

    /// <summary>Reports the alerts that nothing follows.</summary>
    public void ReportLeft()
    {
        foreach (var (alert, guards) in _pending)
        {
            sink.Report(AlertWithoutStep.At(alert), guards);
        }

        _pending.Clear();
    }
}
