using System.Collections.Immutable;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Prose;

/// <summary>Finds the texts of a file in its tree, as they are written: once a file, whatever loops and variants make of it.</summary>
internal sealed class ProseReader
{
    private readonly SourceText _text;
    private readonly ImmutableArray<ProseText>.Builder _texts = ImmutableArray.CreateBuilder<ProseText>();
    private readonly ImmutableArray<ImmutableArray<AlertSyntax>>.Builder _runs = ImmutableArray.CreateBuilder<ImmutableArray<AlertSyntax>>();

    private ProseReader(SourceText text) => _text = text;

    /// <summary>Reads a file, or a part of it.</summary>
    public static FileProse Read(SourceText text, SyntaxNode root)
    {
        var reader = new ProseReader(text);
        foreach (var node in root.DescendantsAndSelf())
        {
            reader.Texts(node);
            reader.Alerts(node);
        }

        return new FileProse(text, reader._texts.ToImmutable(), reader._runs.ToImmutable());
    }

    private void Texts(SyntaxNode node)
    {
        switch (node)
        {
            case AlertSyntax alert:
                _texts.Add(new ProseText(_text, alert.Text, ProseKind.Alert, alert));
                break;
            case TextPropertySyntax property:
                Add(property.Text, KindOf(property.Keyword.Text));
                break;
            case FigurePropertySyntax figure:
                // One that is empty is told as a picture without a caption.
                Add(string.IsNullOrWhiteSpace(figure.Caption?.Value) ? null : figure.Caption, ProseKind.Label);
                break;
            case VerifyPropertySyntax verify:
                Add(verify.Text, ProseKind.Check, TakenBy.Verify, verify.Expect);
                Add(verify.PlaceText, ProseKind.Label);
                break;
            case AsideSyntax aside:
                Add(aside.How, ProseKind.Instruction);
                break;
            case TextActionSyntax action:
                Add(action.Text, KindOfVerb(action.Verb.Text), TakenByVerb(action.Verb.Text), action.Expect);
                break;
            case CheckRuleSyntax check:
                Add(check.Text, KindOfVerb(check.Verb.Text), TakenByVerb(check.Verb.Text), check.Expect);
                break;
            case TestRuleSyntax test:
                Add(test.Text, ProseKind.Label);
                break;
            case WhileSyntax open:
                Add(open.Because, ProseKind.Description);
                break;
            case UnknownPropertySyntax unknown:
                Add(unknown.Because, ProseKind.Description);
                break;
            case DiscardSyntax discard:
                Add(discard.Because, ProseKind.Description);
                break;
            case StageSyntax stage:
                Add(stage.Title, ProseKind.Label);
                break;
            case DeclarationSyntax { Title: { } title }:
                Add(title, ProseKind.Label);
                break;
            case PartSyntax { Title: { } title }:
                Add(title, ProseKind.Label);
                break;
            case EnergySyntax { Title: { } title }:
                Add(title, ProseKind.Label);
                break;
            case FluidSyntax { Title: { } title }:
                Add(title, ProseKind.Label);
                break;
            case ControlSyntax { Title: { } title }:
                Add(title, ProseKind.Label);
                break;
            case PlaceSyntax { Title: { } title }:
                Add(title, ProseKind.Label);
                break;
            case OptionSyntax { Title: { } title }:
                Add(title, ProseKind.Label);
                break;
        }
    }

    private void Add(TextSyntax? text, ProseKind kind, TakenBy taken = TakenBy.Nothing, LimitSyntax? limit = null)
    {
        // A text that the parser put in for a missing one has no quotes.
        if (text is { Span.Length: >= 2 })
        {
            _texts.Add(new ProseText(_text, text, kind) { Taken = taken, HasLimit = limit is not null });
        }
    }

    private static ProseKind KindOfVerb(string verb) => verb switch
    {
        "task" => ProseKind.Instruction,
        "record" or "pause" => ProseKind.Label,
        _ => ProseKind.Check,
    };

    private static TakenBy TakenByVerb(string verb) => verb switch
    {
        "measure" => TakenBy.Measure,
        "check" => TakenBy.Check,
        _ => TakenBy.Nothing,
    };

    private static ProseKind KindOf(string keyword) => keyword switch
    {
        "how" or "isolate" or "restore" or "empty" or "fill" or "release" or "engage" or "prepare" or "shutdown" or "lock" or "bleed" =>
            ProseKind.Instruction,
        "check" => ProseKind.Check,
        _ => ProseKind.Label,
    };

    private void Alerts(SyntaxNode node)
    {
        switch (node)
        {
            case StageSyntax stage:
                Runs(stage.Steps);
                break;
            case WorkSyntax work:
                Runs(work.Steps);
                break;
            case RefitSyntax refit:
                Runs(refit.Rules);
                break;
            case TestRuleSyntax test:
                Runs(test.Items);
                break;
            case EachSyntax each:
                Runs(each.Body);
                break;
            case WhenSyntax branch:
                Runs(branch.Body);
                break;
            case ProcedureSyntax procedure:
                Run(procedure.Items);
                break;
            case MachineSyntax or FileSyntax:
                break;
            default:
                Run(node.Children);
                break;
        }
    }

    /// <summary>Alerts that follow each other stand before one step.</summary>
    private void Runs(ImmutableArray<SyntaxNode> nodes)
    {
        var run = new List<AlertSyntax>();
        foreach (var node in nodes)
        {
            if (node is AlertSyntax alert)
            {
                run.Add(alert);
            }
            else
            {
                Close(run);
            }
        }

        Close(run);
    }

    /// <summary>All alerts of one block stand together, whatever stands between them.</summary>
    private void Run(IEnumerable<SyntaxNode> nodes)
    {
        List<AlertSyntax>? run = null;
        foreach (var node in nodes)
        {
            if (node is AlertSyntax alert)
            {
                (run ??= []).Add(alert);
            }
        }

        if (run is not null)
        {
            Close(run);
        }
    }

    private void Close(List<AlertSyntax> run)
    {
        if (run.Count > 1)
        {
            _runs.Add([.. run]);
        }

        run.Clear();
    }
}
