using System.Collections.Immutable;
using System.Text.Json;
using ProcScript.Analysis;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Runs;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.LanguageServer.Features;

/// <summary>
/// Where each step of a job was written, and, the other way round, which steps each stretch of the texts comes to: a line of the strip the steps
/// that take off and those that put back, a <c>do</c> line and the procedure that it does all that they bring in, a part or a joint of the machine
/// what is done to it.
/// </summary>
internal sealed class PlaceView
{
    private readonly LibraryAnalysis _analysis;
    private readonly Procedure _procedure;
    private readonly ImmutableArray<PerformedAction> _actions;
    private readonly Dictionary<SourceSpan, SortedSet<int>> _written = [];
    private readonly List<TextStretch> _stretches = [];

    private PlaceView(LibraryAnalysis analysis, ProcedureReport report)
    {
        _analysis = analysis;
        _procedure = report.Procedure;
        _actions = [.. report.Outcome.Strip?.Actions ?? [], .. report.Outcome.Refit?.Actions ?? []];
        foreach (var action in _actions)
        {
            var sources = ActionSource.Of(action.Origin).ToList();
            sources.ForEach(source => Add(source.Source, action));
            sources.SelectMany(source => source.Calls).ToList().ForEach(call => Add(call, action));
            if (action.Target is { } item)
            {
                Add(item.Declared, action);
            }

            if (action.Target is Joint { Kind: { } kind })
            {
                Add(kind.Declared, action);
            }
        }

        foreach (var goal in _procedure.Goals)
        {
            AddAll(goal.Source, action => action.Verb == goal.Verb && action.Target == goal.Target);
        }

        foreach (var rule in _procedure.Rules)
        {
            AddAll(rule.Source, action => Anchors(rule).Any(anchor => anchor.Verb == action.Verb && anchor.Target == action.Target));
        }
    }

    /// <summary>The view in JSON.</summary>
    public static string Json(LibraryAnalysis analysis, ProcedureReport report, Plan plan) =>
        JsonSerializer.Serialize(Of(analysis, report, plan), ProtocolJson.Default.StepPlaces);

    /// <summary>The places of a proven job.</summary>
    public static StepPlaces Of(LibraryAnalysis analysis, ProcedureReport report, Plan plan)
    {
        PlaceView view = new(analysis, report);
        foreach (var path in report.Procedure.Files)
        {
            foreach (var declaration in analysis.Library.Trees[path].Root.Declarations)
            {
                view.Walk(path, declaration);
            }
        }

        var actions = view._actions.ToDictionary(NumberOf);
        return new StepPlaces(
            [.. plan.Strip.Append(plan.Work).Concat(plan.Refit).SelectMany(card => card.Steps).Select(step => view.Place(step, actions))],
            [.. view._stretches]);
    }

    /// <summary>Runs number from 0, cards from 1.</summary>
    private static int NumberOf(PerformedAction action) => action.Number + 1;

    private static IEnumerable<RefitAnchor> Anchors(RefitRule rule) => rule switch
    {
        OrderRule order => [order.Earlier, order.Later],
        SnugRule snug => snug.Joints,
        OpenRule open => [open.Action],
        _ => [],
    };

    private void Add(SourceSpan place, PerformedAction action)
    {
        if (!_written.TryGetValue(place, out var steps))
        {
            _written.Add(place, steps = []);
        }

        steps.Add(NumberOf(action));
    }

    private void AddAll(SourceSpan place, Func<PerformedAction, bool> isMeant)
    {
        foreach (var action in _actions.Where(isMeant))
        {
            Add(place, action);
        }
    }

    private StepPlace Place(PlanStep step, Dictionary<int, PerformedAction> actions)
    {
        var position = new Position(step.Source.Line - 1, step.Source.Column - 1);
        var calls = ActionSource.Of(actions[step.Number].Origin).Select(source => source.Calls).FirstOrDefault(calls => !calls.IsEmpty, []);
        return new StepPlace(
            step.Number,
            new Location(_analysis.Files.UriOf(step.Source.Path), new Protocol.Range(position, position)),
            [.. calls.Select(_analysis.LocationOf)]);
    }

    /// <summary>Finds what a node comes to: what was written right in it, else all that the nodes in it come to.</summary>
    private SortedSet<int> Walk(string path, SyntaxNode node)
    {
        var at = _stretches.Count;
        var steps = new SortedSet<int>(_written.GetValueOrDefault(new SourceSpan(path, node.Span), []));
        var within = new SortedSet<int>();
        var alerts = new List<AlertSyntax>();
        foreach (var child in node.Children)
        {
            if (child is WordSyntax or ReferenceSyntax)
            {
                steps.UnionWith(_written.GetValueOrDefault(new SourceSpan(path, child.Span), []));
                steps.UnionWith(child is ReferenceSyntax reference ? _written.GetValueOrDefault(new SourceSpan(path, reference.Name.Span), []) : []);
            }
            else if (child is AlertSyntax alert)
            {
                alerts.Add(alert);
            }
            else
            {
                var found = Walk(path, child);
                within.UnionWith(found);
                // An alert is printed before the step that comes next.
                alerts.ForEach(alert => Tell(_stretches.Count, path, alert, found));
                alerts.Clear();
            }
        }

        if (node is ProcedureSyntax own && _procedure.IsOf(path, own))
        {
            // Its head is printed on the cover.
            Tell(at, path, node, []);
        }
        else if (node is not MachineSyntax)
        {
            steps = steps.Count > 0 ? steps : within;
            if (steps.Count > 0)
            {
                Tell(at, path, node, steps);
            }
        }

        return steps;
    }

    private void Tell(int at, string path, SyntaxNode node, SortedSet<int> steps)
    {
        var place = _analysis.LocationOf(new SourceSpan(path, node.Span));
        _stretches.Insert(at, new TextStretch(place.Uri, place.Range, [.. steps]));
    }
}
