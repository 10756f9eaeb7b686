using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Machines;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Rules.Names;
using ProcScript.Model.Rules.Procedures;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Procedures;

/// <summary>The outlines of all procedures, and what is to be said of how they call each other.</summary>
internal sealed class ProcedureOutlines
{
    private readonly Dictionary<ProcedureSymbol, ProcedureOutline> _bySymbol;

    private ProcedureOutlines(ImmutableArray<ProcedureOutline> all)
    {
        All = all;
        _bySymbol = all.ToDictionary(outline => outline.Symbol);
    }

    /// <summary>All, in the order of files and text.</summary>
    public ImmutableArray<ProcedureOutline> All { get; private set; }

    /// <summary>Whether some call each other in a round.</summary>
    public bool HasCircles { get; private set; }

    /// <summary>The outline of a procedure.</summary>
    public ProcedureOutline Of(ProcedureSymbol symbol) => _bySymbol[symbol];

    /// <summary>The outline of a procedure; null where it is gone.</summary>
    public ProcedureOutline? Find(ProcedureSymbol symbol) => _bySymbol.GetValueOrDefault(symbol);

    /// <summary>Outlines every procedure of the table.</summary>
    public static ProcedureOutlines Of(
        SymbolTable table,
        SymbolLookup lookup,
        IReadOnlyDictionary<MachineSymbol, MachineOutline> machines,
        Pieces pieces,
        IReadOnlyDictionary<ProcedureSymbol, ProcedureHead> known)
    {
        var symbols = table.All.OfType<ProcedureSymbol>().ToArray();
        var heads = pieces.Make(
            symbols,
            symbol => known.TryGetValue(symbol, out var head) && head.Holds(machines, pieces.Validity) ? head : null,
            symbol => Head(symbol, lookup, machines));
        var outlines = new ProcedureOutlines([.. heads.Select(ProcedureOutline.Of)]);
        outlines.WalkCalls();
        return outlines;
    }

    /// <summary>Outlines a procedure that none of these calls.</summary>
    public ProcedureOutline Outline(ProcedureSymbol symbol, SymbolLookup lookup, IReadOnlyDictionary<MachineSymbol, MachineOutline> machines)
    {
        var outline = ProcedureOutline.Of(Head(symbol, lookup, machines));
        foreach (var target in outline.Calls.Select(call => Of(call.Target)).Where(target => target.Machine == outline.Machine))
        {
            outline.Options |= target.Options;
        }

        return outline;
    }

    /// <summary>Puts an outline in the place of another.</summary>
    public void Replace(int place, ProcedureOutline outline)
    {
        _bySymbol.Remove(All[place].Symbol);
        _bySymbol.Add(outline.Symbol, outline);
        All = All.SetItem(place, outline);
    }

    private static ProcedureHead Head(
        ProcedureSymbol symbol, SymbolLookup lookup, IReadOnlyDictionary<MachineSymbol, MachineOutline> machines)
    {
        var sink = new FindingSink();
        var place = BindingPlace.In(symbol.File);
        var machine = lookup.Find<MachineSymbol>(symbol.Node.Machine, "machine", place, sink) is { } found ? machines[found] : null;
        var calls = ImmutableArray.CreateBuilder<ProcedureCall>();
        var guards = JobVariants.Bind(symbol.Node, machine, place, sink);
        var options = guards.Options;
        Walk(symbol.Node.Items);
        return new ProcedureHead(symbol, machine, Parameters(symbol, place, sink), calls.ToImmutable(), guards, options, sink);

        void Walk(IEnumerable<SyntaxNode> nodes)
        {
            foreach (var node in nodes)
            {
                switch (node)
                {
                    case DoSyntax call when lookup.See(call.Procedure.Text, symbol.File, sink) is ProcedureSymbol target:
                        calls.Add(new ProcedureCall(target, place.At(call.Span)));
                        break;
                    case WhenSyntax branch:
                        if (branch.Test.Value is null && machine?.OptionNames.IndexOf(branch.Test.Name.Text) is >= 0 and var option)
                        {
                            options |= 1UL << option;
                        }

                        Walk(branch.Body);
                        break;
                    case EachSyntax each:
                        Walk(each.Body);
                        break;
                    case StageSyntax stage:
                        Walk(stage.Steps);
                        break;
                    case WorkSyntax work:
                        Walk(work.Steps);
                        break;
                    case RefitSyntax refit:
                        Walk(refit.Rules);
                        break;
                    case ActionSyntax action:
                        Walk(action.Properties);
                        break;
                    case TextActionSyntax action:
                        Walk(action.Properties);
                        break;
                    case CheckRuleSyntax rule:
                        Walk(rule.Properties);
                        break;
                    case TestRuleSyntax test:
                        Walk(test.Items);
                        break;
                    case RefitPropertySyntax refit:
                        Walk(refit.Properties);
                        break;
                }
            }
        }
    }

    private static ImmutableArray<Parameter> Parameters(ProcedureSymbol symbol, BindingPlace place, FindingSink sink)
    {
        var parameters = ImmutableArray.CreateBuilder<Parameter>();
        foreach (var syntax in symbol.Node.Parameters)
        {
            var declared = place.At(syntax.Name.Span);
            if (parameters.FirstOrDefault(one => one.Name == syntax.Name.Text) is { } earlier)
            {
                sink.Report(DeclaredTwice.Variable(syntax.Name.Text, declared, earlier.Declared));
                continue;
            }

            var domain = Unrolling.Domain(syntax.Values, place, sink);
            if (syntax.Name.IsMissing || domain.IsEmpty)
            {
                sink.Poison();
            }

            parameters.Add(new Parameter(syntax.Name.Text, domain, declared));
        }

        return parameters.ToImmutable();
    }

    /// <summary>
    /// Reports calls in a round, and hands the options that matter to a procedure on to its callers. On a stack of its own: chains may be
    /// long.
    /// </summary>
    private void WalkCalls()
    {
        var seen = new HashSet<ProcedureOutline>();
        var depth = new Dictionary<ProcedureOutline, int>();
        var path = new List<(ProcedureOutline Outline, int Next)>();
        foreach (var root in All)
        {
            if (seen.Contains(root))
            {
                continue;
            }

            Enter(root);
            while (path.Count > 0)
            {
                var (outline, next) = path[^1];
                if (next == outline.Calls.Length)
                {
                    path.RemoveAt(path.Count - 1);
                    depth.Remove(outline);
                    if (path.Count > 0 && path[^1].Outline.Machine == outline.Machine)
                    {
                        path[^1].Outline.Options |= outline.Options;
                    }

                    continue;
                }

                path[^1] = (outline, next + 1);
                var target = Of(outline.Calls[next].Target);
                if (depth.TryGetValue(target, out var start))
                {
                    var round = path.Skip(start).ToArray();
                    HasCircles = true;
                    outline.Sink.Report(CircularDo.At(
                        [.. round.Select(step => step.Outline.Symbol.Name)],
                        [.. round.Select(step => step.Outline.Calls[step.Next - 1].Source)]));
                }
                else if (seen.Contains(target))
                {
                    outline.Options |= target.Machine == outline.Machine ? target.Options : 0;
                }
                else
                {
                    Enter(target);
                }
            }
        }

        void Enter(ProcedureOutline outline)
        {
            seen.Add(outline);
            depth.Add(outline, path.Count);
            path.Add((outline, 0));
        }
    }
}
