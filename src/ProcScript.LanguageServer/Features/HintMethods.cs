using System.Collections.Immutable;
using System.Globalization;
using ProcScript.Analysis;
using ProcScript.Analysis.Runs;
using ProcScript.Analysis.States;
using ProcScript.LanguageServer.Jobs;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Serving;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Model.Machines;
using ProcScript.Model.Quantities;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.LanguageServer.Features;

/// <summary>What a line does not say and one wants to know: how many are left, the step of the refit, the torque in the other unit.</summary>
internal static class HintMethods
{
    /// <summary>Adds the method.</summary>
    public static void Add(MethodTable methods, Workspace workspace) =>
        methods.Request<InlayHintParams, ImmutableArray<InlayHint>>("textDocument/inlayHint", async (parameters, cancellation) =>
        {
            if (await workspace.AskAsync(parameters.TextDocument, cancellation).ConfigureAwait(false) is not { } asked)
            {
                return [];
            }

            var span = asked.Places.SpanOf(parameters.Range);
            return
            [
                .. Torques(asked).Concat(asked.Tree.Root.Declarations.OfType<ProcedureSyntax>()
                        .Where(procedure => procedure.Span.Start <= span.End && procedure.Span.End >= span.Start)
                        .SelectMany(procedure => Steps(asked, procedure)))
                    .Where(hint => hint.At >= span.Start && hint.At <= span.End)
                    .OrderBy(hint => hint.At)
                    .Select(hint => new InlayHint(asked.Places.PositionOf(hint.At), hint.Label, PaddingLeft: true)),
            ];
        });

    /// <summary>The hints of steps; of those that only some variants have, as the first of these has them.</summary>
    private static IEnumerable<(int At, string Label)> Steps(Asked asked, ProcedureSyntax procedure)
    {
        var nodes = procedure.DescendantsAndSelf().OfType<ActionSyntax>().DistinctBy(action => action.Target.Span).ToDictionary(action => action.Target.Span);
        var told = new SortedDictionary<int, (int At, string Label)>();
        var plain = default(Machine);
        foreach (var report in JobsInText.Reports(asked, procedure))
        {
            plain ??= report.Procedure.Machine;
            var options = string.Join(", ", report.Procedure.Machine.With.Except(plain.With).Select(option => option.Name));
            foreach (var (target, (refit, left)) in Steps(asked, report))
            {
                if (nodes.TryGetValue(target, out var node))
                {
                    told.TryAdd(node.Span.Start, (EndOfSentence(asked, node), Label(left, refit, options)));
                }
            }

            if (told.Count == nodes.Count)
            {
                break;
            }
        }

        return told.Values.Where(hint => hint.Label.Length > 0);
    }

    /// <summary>What is to be told of each step of one variant; all passes of a loop together.</summary>
    private static Dictionary<TextSpan, (SortedSet<int> Refit, int Left)> Steps(Asked asked, ProcedureReport report)
    {
        var mirrors = (report.Outcome.Refit?.Actions ?? [])
            .Where(action => action.Origin is InverseOf)
            .ToLookup(action => ((InverseOf)action.Origin).Action.Number, action => action.Number + 1);
        var hints = new Dictionary<TextSpan, (SortedSet<int> Refit, int Left)>();
        foreach (var action in report.Outcome.Strip?.Actions ?? [])
        {
            if (action.Origin is not WrittenStep { Step: { Calls.IsEmpty: true } step } || step.Source.Path != asked.Path)
            {
                continue;
            }

            var hint = hints.TryGetValue(step.TargetSpan.Span, out var known) ? known : ([], 0);
            hint.Refit.UnionWith(report.IsProven ? mirrors[action.Number] : []);
            hint.Left = action.Target is Joint && action.Changes is [{ Variable.Kind: StateKind.Attached } change] ? change.After : 0;
            hints[step.TargetSpan.Span] = hint;
        }

        return hints;
    }

    /// <summary>Behind the words of an action, before its braces.</summary>
    private static int EndOfSentence(Asked asked, ActionSyntax action)
    {
        var words = asked.Tree.Text.Slice(action.Span);
        var brace = words.IndexOf('{', StringComparison.Ordinal);
        return action.Span.Start + (brace < 0 ? words : words[..brace]).TrimEnd().Length;
    }

    /// <summary>The words; of a step that only machines with options have, numbers are told for these.</summary>
    private static string Label(int left, SortedSet<int> refit, string options)
    {
        var label = left > 0 ? string.Create(CultureInfo.InvariantCulture, $"{left} left") : "";
        return refit.Count == 0
            ? label
            : $"{label}{(label.Length > 0 ? ", " : "")}refit {string.Join(", ", refit)}{(options.Length > 0 ? $" with {options}" : "")}";
    }

    private static IEnumerable<(int At, string Label)> Torques(Asked asked)
    {
        var ofKinds =
            from kind in asked.Analysis.Library.Kinds
            where kind.Declared.Path == asked.Path && kind.Torque is not null
            from declaration in asked.Tree.Root.Declarations.OfType<CatalogSyntax>()
            where declaration.Name.Span == kind.Declared.Span
            from property in declaration.Properties.OfType<TorquePropertySyntax>()
            select (property.Span.End, kind.Torque!);
        var ofJoints =
            from machine in asked.Analysis.Library.Machines
            where machine.Declared.Path == asked.Path
            from joint in machine.Joints
            where joint is { TorqueDeclared: not null, Torque: not null }
            select (joint.TorqueDeclared!.Value.Span.End, joint.Torque!);
        return ofKinds.Concat(ofJoints).DistinctBy(torque => torque.End).Select(torque => (torque.End, InOtherUnit(torque.Item2)));
    }

    private static string InOtherUnit(TighteningTorque torque)
    {
        var other = torque.Final.Unit == Units.PoundForceFoot || torque.Final.Unit == Units.PoundForceInch ? Units.NewtonMetre : Units.PoundForceFoot;
        return string.Join(", ", torque.Stages.Select(stage => stage.PrintIn(other)));
    }
}
