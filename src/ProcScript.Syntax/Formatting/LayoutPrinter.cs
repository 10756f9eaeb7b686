namespace ProcScript.Syntax.Formatting;

/// <summary>Decides on the blanks before each word.</summary>
internal sealed class LayoutPrinter
{
    private const int Step = 2;

    private readonly LayoutWords _words;
    private readonly string[] _gaps;
    private int _column;

    private LayoutPrinter(LayoutWords words)
    {
        _words = words;
        _gaps = new string[words.Count + 1];
    }

    /// <summary>The blanks before each word, and behind the last.</summary>
    public static string[] Print(LayoutWords words, LayoutBlock file)
    {
        var printer = new LayoutPrinter(words);
        printer.Lines(file, 0);
        printer._gaps[words.Count] = words.Count == 0 ? "" : words.NewLine;
        return printer._gaps;
    }

    /// <summary>The elements of a block in lines: those that share a line keep sharing it while they fit.</summary>
    private void Lines(LayoutBlock block, int indent)
    {
        var elements = block.Elements;
        for (var next = 0; next < elements.Count;)
        {
            var end = next + 1;
            var width = (long)elements[next].Width;
            while (end < elements.Count && SharesLine(elements[end - 1], elements[end]))
            {
                width += 2 + elements[end++].Width;
            }

            var fits = indent + width <= Formatter.LineWidth;
            for (var one = next; one < end; one++)
            {
                if (one > next && fits)
                {
                    Put(elements[one].First, "  ");
                }
                else
                {
                    Break(elements[one].First, indent, isFirst: one == 0);
                }

                Element(elements[one], indent);
            }

            next = end;
        }
    }

    private bool SharesLine(LayoutElement before, LayoutElement here) =>
        _words[here.First].Breaks == 0
        && !before.IsComment
        && before.TrailingComment < 0
        && before.Width != LayoutBlock.Never
        && here.Width != LayoutBlock.Never;

    /// <summary>The rest of an element, whose first word has been put.</summary>
    private void Element(LayoutElement element, int indent)
    {
        var isFlat = element.Width != LayoutBlock.Never && _column - _words[element.First].Span.Length + element.Width <= Formatter.LineWidth;
        var block = 0;
        for (var word = element.First + 1; word < element.End; word++)
        {
            if (block < element.Blocks.Count && element.Blocks[block].First == word)
            {
                Block(element.Blocks[block], indent, isFlat);
                word = element.Blocks[block++].Last;
            }
            else if (_words[word - 1].IsComment || _words[word].IsComment)
            {
                Comment(word, indent);
            }
            else
            {
                var isTooLong = !isFlat && _words.BeginsClause(word) && !ClauseFits(element, word);
                Put(word, isTooLong ? NewLine(indent + Step) : _words.Blank(word));
            }
        }

        if (element.TrailingComment >= 0)
        {
            Put(element.TrailingComment, "  ");
        }
    }

    /// <summary>Whether a clause fits on the line: its words up to the next clause, block or comment.</summary>
    private bool ClauseFits(LayoutElement element, int clause)
    {
        var column = _column;
        for (var word = clause; word < element.End; word++)
        {
            if (word > clause && (_words.BeginsClause(word) || _words[word].IsComment))
            {
                break;
            }

            column += _words.Blank(word).Length + _words[word].Span.Length;
            if (_words[word].Sign == '{')
            {
                break;
            }
        }

        return column <= Formatter.LineWidth;
    }

    /// <summary>A block with its braces.</summary>
    private void Block(LayoutBlock block, int indent, bool isFlat)
    {
        if (_words[block.First - 1].IsComment)
        {
            Break(block.First, indent, isFirst: true);
        }
        else
        {
            Put(block.First, " ");
        }

        if (isFlat || (block.Width != LayoutBlock.Never && _column - 1 + block.Width <= Formatter.LineWidth))
        {
            Flat(block);
            return;
        }

        if (block.OpeningComment >= 0)
        {
            Put(block.OpeningComment, "  ");
        }

        Lines(block, indent + Step);
        Put(block.Last, NewLine(indent));
    }

    private void Flat(LayoutBlock block)
    {
        for (var next = 0; next < block.Elements.Count; next++)
        {
            var element = block.Elements[next];
            Put(element.First, next == 0 ? " " : "  ");
            var inner = 0;
            for (var word = element.First + 1; word < element.End; word++)
            {
                Put(word, _words.Blank(word));
                if (inner < element.Blocks.Count && element.Blocks[inner].First == word)
                {
                    Flat(element.Blocks[inner]);
                    word = element.Blocks[inner++].Last;
                }
            }
        }

        Put(block.Last, " ");
    }

    /// <summary>A comment within a sentence, or the word behind one.</summary>
    private void Comment(int word, int indent) =>
        Put(word, _words[word].IsComment && _words[word].Breaks == 0 ? "  " : NewLine(indent + Step));

    /// <summary>Begins a line, behind a blank one where the author has any.</summary>
    private void Break(int word, int indent, bool isFirst)
    {
        if (word == 0)
        {
            Put(word, "");
            return;
        }

        var blank = !isFirst && _words[word].Breaks > 1 ? _words.NewLine : "";
        Put(word, blank + NewLine(indent));
    }

    private string NewLine(int indent) => _words.NewLine + new string(' ', indent);

    private void Put(int word, string gap)
    {
        _gaps[word] = gap;
        var lineStart = gap.LastIndexOfAny(['\n', '\r']);
        _column = (lineStart < 0 ? _column + gap.Length : gap.Length - lineStart - 1) + _words[word].Span.Length;
    }
}
