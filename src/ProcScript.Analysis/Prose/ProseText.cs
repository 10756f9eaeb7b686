using System.Collections.Immutable;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Prose;

/// <summary>A text of the author, taken apart into sentences whose places in the file are known.</summary>
internal sealed class ProseText
{
    private readonly SourceText _file;
    private ImmutableArray<Sentence> _sentences;

    /// <summary>Takes a text of a file.</summary>
    public ProseText(SourceText file, TextSyntax syntax, ProseKind kind, AlertSyntax? alert = null) =>
        (_file, Syntax, Kind, Alert) = (file, syntax, kind, alert);

    /// <summary>The text in the tree.</summary>
    public TextSyntax Syntax { get; }

    /// <summary>What it is there for.</summary>
    public ProseKind Kind { get; }

    /// <summary>The alert whose text it is; null for other texts.</summary>
    public AlertSyntax? Alert { get; }

    /// <summary>How a reading belongs to it.</summary>
    public TakenBy Taken { get; init; }

    /// <summary>Whether it says by <c>expect</c> what a reading must be.</summary>
    public bool HasLimit { get; init; }

    /// <summary>What it says.</summary>
    public string Value => Syntax.Value;

    /// <summary>The sentences, in order.</summary>
    public ImmutableArray<Sentence> Sentences => _sentences.IsDefault ? _sentences = SentenceSplitter.Split(Value) : _sentences;

    /// <summary>The whole, with its quotes.</summary>
    public SourceSpan Whole => new(_file.Path, Syntax.Span);

    /// <summary>Where a stretch of the value stands in the file, whatever escapes stand in between.</summary>
    public SourceSpan Place(int start, int end) => new(_file.Path, TextSpan.FromBounds(Offset(start), Offset(end)));

    /// <summary>Where a sentence stands.</summary>
    public SourceSpan Place(Sentence sentence) => Place(sentence.Start, sentence.End);

    /// <summary>Where words stand, from the first to the last.</summary>
    public SourceSpan Place(Word first, Word last) => Place(first.Start, last.End);

    /// <summary>Each escape is two characters in the file and one in the value.</summary>
    private int Offset(int index)
    {
        var at = Syntax.Span.Start + 1;
        for (var i = 0; i < index && at < Syntax.Span.End; i++)
        {
            at += _file.Content[at] == '\\' ? 2 : 1;
        }

        return Math.Min(at, Syntax.Span.End);
    }
}

/// <summary>How a reading belongs to a text.</summary>
internal enum TakenBy
{
    /// <summary>None does.</summary>
    Nothing,

    /// <summary>A <c>check</c> may take one.</summary>
    Check,

    /// <summary>A <c>verify</c> may take one.</summary>
    Verify,

    /// <summary>A <c>measure</c> is there to take one.</summary>
    Measure,
}
