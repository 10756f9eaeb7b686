using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Machines;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Binding.Properties;
using ProcScript.Model.Binding.Quantities;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Rules.Names;
using ProcScript.Model.Rules.Procedures;
using ProcScript.Model.Rules.Quantities;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Binding.Procedures;

/// <summary>Binds single steps. Whether a verb suits its target is the analysis's business.</summary>
internal sealed class StepBinder(ItemLookup items, ConditionBinder conditions, DetailsBinder details, FindingSink sink)
{
    /// <summary>The step, or null where its target does not resolve, which is reported.</summary>
    public Step? Action(ActionSyntax syntax, BindingPlace place, ImmutableArray<SourceSpan> calls)
    {
        var target = items.Find(syntax.Target, place, syntax.Span);
        if (target is not null && syntax.Pieces is { } pieces)
        {
            sink.Report(PiecesInStep.At(target, pieces, place.At(TextSpan.FromBounds(pieces.Span.Start, syntax.Target.Span.Start)), place.At(pieces.Span)), place);
        }

        var (block, needs) = details.Bind(syntax.Properties, PropertyHolders.ItemAction, place);
        var count = Count(syntax, target, place);
        var position = Position(syntax, target, place);
        if (target is null || Verbs.Find(syntax.Verb.Text) is not { } verb)
        {
            sink.Poison();
            return null;
        }

        if (!Verbs.AreUndone(verb))
        {
            ReportRefitAlerts(block, place);
        }

        return new Step
        {
            Verb = verb,
            Target = target,
            Count = count,
            Position = position,
            InBackground = syntax.InBackground,
            WhereNeeded = syntax.WhereNeeded ? new WhereNeeded(place.At(syntax.Span), null) : null,
            Details = block,
            Conditions = needs,
            VerbSpan = place.At(syntax.Verb.Span),
            TargetSpan = place.At(syntax.Target.Span),
            Source = place.At(syntax.Span),
            Calls = calls,
        };
    }

    /// <summary>A measurement, a task, a check, a record or a pause.</summary>
    public Step? Text(TextActionSyntax syntax, BindingPlace place, ImmutableArray<SourceSpan> calls)
    {
        var text = AuthorText.Bind(syntax.Text, place, sink);
        var expect = QuantityBinder.Bind(syntax.Expect, place, sink);
        var inline = conditions.Needs(syntax.Needs, place);
        var (block, needs) = details.Bind(syntax.Instruments, syntax.Properties, place);
        if (Verbs.Find(syntax.Verb.Text) is not { } verb)
        {
            sink.Poison();
            return null;
        }

        return new Step
        {
            Verb = verb,
            Text = text,
            Expect = expect,
            Conditions = inline.AddRange(needs),
            InBackground = syntax.InBackground,
            Details = block,
            VerbSpan = place.At(syntax.Verb.Span),
            TargetSpan = place.At(syntax.Verb.Span),
            Source = place.At(syntax.Span),
            Calls = calls,
        };
    }

    /// <summary>Something that does not go back.</summary>
    public Step? Discard(DiscardSyntax syntax, BindingPlace place, ImmutableArray<SourceSpan> calls)
    {
        var reason = AuthorText.Bind(syntax.Because, place, sink);
        if (items.Find(syntax.Target, place, syntax.Span) is not { } target)
        {
            return null;
        }

        if (syntax.Amount is not null)
        {
            sink.Report(DiscardOfSome.At(target, place.At(syntax.Amount.Span.Cover(syntax.Target.Span))), place);
            return null;
        }

        return new Step
        {
            Verb = Verb.Discard,
            Target = target,
            Text = reason,
            VerbSpan = place.At(new TextSpan(syntax.Span.Start, Math.Min("discard".Length, syntax.Span.Length))),
            TargetSpan = place.At(syntax.Target.Span),
            Source = place.At(syntax.Span),
            Calls = calls,
        };
    }

    /// <summary>Alerts for the way back of what has none.</summary>
    private void ReportRefitAlerts(ActionDetails block, BindingPlace place)
    {
        foreach (var alert in block.Alerts.Where(alert => !alert.IsOfStrip).Concat(block.Refit?.Alerts ?? []))
        {
            sink.Report(AlertWithoutStep.InTheRefit(alert), place);
        }
    }

    private int? Count(ActionSyntax syntax, MachineItem? target, BindingPlace place)
    {
        if (syntax.Amount is not { } amount)
        {
            return null;
        }

        if (target is not (null or Joint))
        {
            sink.Report(WrongSortOfItem.Counted(target, ItemWords.Sort(target), place.At(amount.Span), target.Declared), place);
            return null;
        }

        if (amount.Count == 0)
        {
            sink.Report(CountOfZero.At($"`{syntax.Verb.Text}`", place.At(amount.Span)), place);
            return null;
        }

        return amount.Count;
    }

    private int Position(ActionSyntax syntax, MachineItem? target, BindingPlace place)
    {
        switch (target, syntax.Position)
        {
            case (Control control, { } position):
                return Positions.Find(control, position, place, sink);
            case (Control control, null) when syntax.Verb.Text == "set":
                sink.Report(MissingProperty.Position(control, place.At(syntax.Target.Span)), place);
                return -1;
            case ({ } other, { } position) when syntax.Verb.Text != "set":
                var sort = ItemWords.Sort(other);
                sink.Report(WrongSortOfItem.Positioned(other, sort, place.At(position.Span), other.Declared), place);
                return -1;
            default:
                return -1;
        }
    }
}
