namespace ProcScript.Syntax.Formatting;

/// <summary>A file, or what stands between two braces: sentences and comments.</summary>
internal sealed class LayoutBlock
{
    /// <summary>The width of what cannot stand on one line.</summary>
    public const int Never = int.MaxValue;

    private LayoutBlock(int first) => First = first;

    /// <summary>The opening brace; of a file the first word.</summary>
    public int First { get; }

    /// <summary>The closing brace; of a file the end.</summary>
    public int Last { get; private set; }

    /// <summary>A comment behind the opening brace; -1 where there is none.</summary>
    public int OpeningComment { get; private set; } = -1;

    /// <summary>What stands in it, in order.</summary>
    public List<LayoutElement> Elements { get; } = [];

    /// <summary>How wide it is on one line; <see cref="Never"/> where the author has it on several, or a comment forbids it.</summary>
    public int Width { get; private set; }

    /// <summary>A whole file.</summary>
    public static LayoutBlock File(LayoutWords words)
    {
        var file = new LayoutBlock(0);
        file.Last = file.Fill(words, 0);
        file.Width = Never;
        return file;
    }

    private static LayoutBlock Braced(LayoutWords words, int opening)
    {
        var block = new LayoutBlock(opening);
        var next = opening + 1;
        if (words[next] is { IsComment: true, Breaks: 0 })
        {
            block.OpeningComment = next++;
        }

        block.Last = block.Fill(words, next);
        block.Width = block.Measure(words);
        return block;
    }

    /// <summary>Reads elements up to the closing brace or the end of the file, and gives its index.</summary>
    private int Fill(LayoutWords words, int next)
    {
        while (next < words.Count && words[next].Sign != '}')
        {
            if (words[next] is { IsComment: true, Breaks: 0 } && Elements.Count > 0 && !Elements[^1].IsComment)
            {
                Elements[^1].TrailingComment = next++;
                continue;
            }

            var element = new LayoutElement(next);
            next = Read(words, element);
            element.Measure(words);
            Elements.Add(element);
        }

        return next;
    }

    private static int Read(LayoutWords words, LayoutElement element)
    {
        var next = element.First;
        if (words[next].IsComment)
        {
            element.IsComment = true;
            return element.End = next + 1;
        }

        var end = words[next].SentenceEnd;
        for (next++; next < words.Count && words[next].Sign != '}'; next++)
        {
            if (words[next].Sign == '{')
            {
                var block = Braced(words, next);
                element.Blocks.Add(block);
                next = block.Last;
            }
            else if (words[next].IsComment)
            {
                if (EndsBefore(words, next, end))
                {
                    break;
                }

                element.HasComment = true;
            }
            else if (words[next].SentenceEnd > 0 && words[next].Span.Start >= end)
            {
                break;
            }
        }

        return element.End = next;
    }

    /// <summary>Whether a comment stands behind the last word of a sentence.</summary>
    private static bool EndsBefore(LayoutWords words, int comment, int end)
    {
        var next = comment;
        while (next < words.Count && words[next].IsComment)
        {
            next++;
        }

        // What opens the block of a sentence belongs to it, even where the sentence has no node of its own.
        return next == words.Count || words[next].Sign == '}' || (words[next].Span.Start >= end && words[next].Sign is not ('{' or ','));
    }

    private int Measure(LayoutWords words)
    {
        if (OpeningComment >= 0)
        {
            return Never;
        }

        for (var word = First + 1; word <= Last; word++)
        {
            if (words[word].Breaks > 0)
            {
                return Never;
            }
        }

        var width = 3L;
        foreach (var element in Elements)
        {
            if (element.Width == Never || element.TrailingComment >= 0)
            {
                return Never;
            }

            width += element.Width + 2;
        }

        return (int)Math.Min(Elements.Count == 0 ? width : width - 1, Never);
    }
}

/// <summary>A sentence with its blocks, or a comment in a line of its own.</summary>
internal sealed class LayoutElement(int first)
{
    /// <summary>Its first word.</summary>
    public int First { get; } = first;

    /// <summary>The word behind its last one.</summary>
    public int End { get; set; }

    /// <summary>Whether it is a comment.</summary>
    public bool IsComment { get; set; }

    /// <summary>Whether a comment stands between its words.</summary>
    public bool HasComment { get; set; }

    /// <summary>A comment at the end of its last line; -1 where there is none.</summary>
    public int TrailingComment { get; set; } = -1;

    /// <summary>Its blocks.</summary>
    public List<LayoutBlock> Blocks { get; } = [];

    /// <summary>How wide it is on one line, without the comment behind it.</summary>
    public int Width { get; private set; }

    /// <summary>Works the width out.</summary>
    public void Measure(LayoutWords words)
    {
        if (HasComment || Blocks.Exists(block => block.Width == LayoutBlock.Never))
        {
            Width = LayoutBlock.Never;
            return;
        }

        var width = 0L;
        var block = 0;
        for (var word = First; word < End; word++)
        {
            width += word > First ? words.Blank(word).Length : 0;
            if (block < Blocks.Count && Blocks[block].First == word)
            {
                width += Blocks[block].Width;
                word = Blocks[block++].Last;
            }
            else
            {
                width += words[word].Span.Length;
            }
        }

        Width = (int)Math.Min(width, LayoutBlock.Never);
    }
}
