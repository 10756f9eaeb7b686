using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Rules.Names;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Binding.Properties;

/// <summary>Lets the properties of one block pass that may stand there, each as often as it may.</summary>
internal sealed class PropertyGate(PropertyHolders holder, FindingSink sink)
{
    private PropertyHolders _holder = holder;
    private Dictionary<string, SourceSpan>? _once;

    /// <summary>Begins another block. A machine has thousands, and a gate for each would cost more than what passes it.</summary>
    public void Open(PropertyHolders next)
    {
        _holder = next;
        _once?.Clear();
    }

    /// <summary>Whether the property counts. Where it does not, a finding says why.</summary>
    public bool Lets(PropertySyntax property, BindingPlace place)
    {
        var keyword = WordsOf(property);
        if (PropertyTable.Find(keyword) is not { } row)
        {
            // The parser made it up while it recovered; its finding stands.
            sink.Poison();
            return false;
        }

        if (!row.Holders.HasFlag(_holder) && PhaseOf(property) != NeedsPhase.Both && PropertyTable.Find(property.Keyword.Text)!.Holders.HasFlag(_holder))
        {
            var direction = new TextSpan(property.Span.Start, keyword.IndexOf(' ', StringComparison.Ordinal));
            sink.Report(PropertyNotHere.OneWay(keyword, _holder, place.At(direction), place.At(property.Keyword.Span)), place);
            return false;
        }

        if (_holder == PropertyHolders.Energy && property is ChangePropertySyntax { Direction.IsMissing: true })
        {
            // The tool of a reading behind its limit, which is a finding already.
            sink.Poison();
            return false;
        }

        if (!row.Holders.HasFlag(_holder))
        {
            sink.Report(PropertyNotHere.At(keyword, _holder, row.Holders, place.At(property.Keyword.Span), place.At(property.Span)), place);
            return false;
        }

        if (row.Repeats)
        {
            return true;
        }

        _once ??= new Dictionary<string, SourceSpan>(StringComparer.Ordinal);
        if (_once.TryAdd(keyword, place.At(property.Keyword.Span)))
        {
            return true;
        }

        sink.Report(PropertyTwice.At(keyword, place.At(property.Keyword.Span), _once[keyword], place.At(property.Span)), place);
        return false;
    }

    /// <summary>The words that name the property. An alert or a picture that stands one way only has no place where there is no way back.</summary>
    private static string WordsOf(PropertySyntax property) => PhaseOf(property) is not NeedsPhase.Both and var phase
        ? $"{(phase == NeedsPhase.Strip ? "strip" : "refit")} {property.Keyword.Text}"
        : property.Keyword.Text;

    private static NeedsPhase PhaseOf(PropertySyntax property) => property switch
    {
        AlertSyntax alert => alert.Phase,
        FigurePropertySyntax figure => figure.Phase,
        _ => NeedsPhase.Both,
    };
}
