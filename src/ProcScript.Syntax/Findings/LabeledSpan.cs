using ProcScript.Syntax.Text;

namespace ProcScript.Syntax.Findings;

/// <summary>A place with a few words that make sense alone.</summary>
/// <param name="Place">The place.</param>
/// <param name="Label">What is to be seen there.</param>
public readonly record struct LabeledSpan(SourceSpan Place, string Label)
{
    private readonly string _label = Label;

    /// <summary>What is to be seen there.</summary>
    public string Label { get => FoldedList.Whole(_label); init => _label = value; }

    /// <summary>The same with its long lists cut short.</summary>
    public LabeledSpan Shortened() => this with { Label = FoldedList.Short(_label) };
}
