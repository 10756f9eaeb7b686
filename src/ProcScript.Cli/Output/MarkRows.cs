namespace ProcScript.Cli.Output;

/// <summary>
/// Lays out the marks under one line: all marks in the first row with the label of the rightmost beside it, the other labels
/// hanging below, from right to left.
/// </summary>
internal static class MarkRows
{
    private const char Hanger = '|';

    /// <summary>The rows, from the top.</summary>
    public static IEnumerable<Piece[]> Of(IReadOnlyCollection<Mark> marks)
    {
        var byPosition = marks.OrderBy(mark => mark.Start).ThenBy(mark => mark.IsPrimary).ToList();
        var beside = Beside(byPosition);
        yield return FirstRow(byPosition, beside);

        var hanging = byPosition.Where((mark, i) => i != beside && mark.Label.Length > 0).ToList();
        if (hanging.Count > 0)
        {
            yield return HangingRow(hanging, label: null);
        }

        while (hanging.Count > 0)
        {
            var mark = hanging[^1];
            hanging.RemoveAt(hanging.Count - 1);
            yield return HangingRow(hanging.Where(other => other.Start < mark.Start), mark);
        }
    }

    /// <summary>The mark whose label can stand beside it, or -1: nothing may be marked further right.</summary>
    private static int Beside(List<Mark> byPosition)
    {
        var last = byPosition.Count - 1;
        return byPosition.Max(mark => mark.End) == byPosition[last].End ? last : -1;
    }

    private static Piece[] FirstRow(List<Mark> byPosition, int beside)
    {
        var row = new Row();
        foreach (var mark in byPosition.OrderBy(mark => mark.IsPrimary))
        {
            row.Fill(mark.Start, mark.End, mark.Sign, mark.Ink);
        }

        return beside >= 0 ? [.. row.Pieces(), new Piece(" " + byPosition[beside].Label, byPosition[beside].Ink)] : [.. row.Pieces()];
    }

    private static Piece[] HangingRow(IEnumerable<Mark> hangers, Mark? label)
    {
        var row = new Row();
        foreach (var mark in hangers)
        {
            row.Fill(mark.Start, mark.Start + 1, Hanger, mark.Ink);
        }

        if (label is not { } last)
        {
            return [.. row.Pieces()];
        }

        row.Reach(last.Start);
        return [.. row.Pieces(), new Piece(last.Label, last.Ink)];
    }

    /// <summary>A row of cells, each with a sign and its colour.</summary>
    private sealed class Row
    {
        private readonly List<(char Sign, Ink Ink)> _cells = [];

        public void Reach(int column)
        {
            while (_cells.Count < column)
            {
                _cells.Add((' ', Ink.Plain));
            }
        }

        public void Fill(int start, int end, char sign, Ink ink)
        {
            Reach(end);
            for (var column = start; column < end; column++)
            {
                _cells[column] = (sign, ink);
            }
        }

        public IEnumerable<Piece> Pieces()
        {
            for (var start = 0; start < _cells.Count;)
            {
                var end = start;
                while (end < _cells.Count && _cells[end].Ink == _cells[start].Ink)
                {
                    end++;
                }

                yield return new Piece(string.Concat(_cells[start..end].Select(cell => cell.Sign)), _cells[start].Ink);
                start = end;
            }
        }
    }
}
