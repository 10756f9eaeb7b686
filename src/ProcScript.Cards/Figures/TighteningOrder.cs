namespace ProcScript.Cards.Figures;

/// <summary>In which order the fasteners of a joint are tightened, by the word for it and their true number; common practice, no source.</summary>
internal static class TighteningOrder
{
    /// <summary>
    /// Crosswise on a circle: the places, counted from the top clockwise from 0, in the order of tightening. Of an even number each second one lies
    /// straight across from the one before, and the next pair as far from those done as it can; of an odd number each lies as far across as it can.
    /// </summary>
    public static IReadOnlyList<int> Star(int count)
    {
        if (count % 2 == 1)
        {
            // The step has no factor in common with the number, so that every place comes once.
            return [.. Enumerable.Range(0, count).Select(turn => turn * (count - 1) / 2 % count)];
        }

        var pairs = count / 2;
        List<int> done = [0];
        while (done.Count < pairs)
        {
            done.Add(Enumerable.Range(0, pairs)
                .Except(done)
                .OrderByDescending(place => done.Min(other => Apart(place, other, pairs)))
                .ThenByDescending(place => Apart(place, done[^1], pairs))
                .ThenBy(place => place)
                .First());
        }

        return [.. done.SelectMany(place => new[] { place, place + pairs })];
    }

    /// <summary>
    /// From the middle outwards: the columns in the order of tightening, each with its row. Few stand in one row; many in two, where each second one
    /// lies in the other row.
    /// </summary>
    public static IReadOnlyList<(int Column, int Row)> InsideOut(int count)
    {
        var rows = RowsOf(count);
        var columns = count / rows;
        var middle = (columns - 1) / 2.0;
        return
        [
            .. Enumerable.Range(0, columns)
                .OrderBy(column => Math.Abs(column - middle))
                .ThenBy(column => column)
                .SelectMany((column, turn) => Enumerable.Range(0, rows).Select(row => (column, rows == 1 || turn % 2 == 0 ? row : 1 - row))),
        ];
    }

    /// <summary>In how many rows they are drawn.</summary>
    public static int RowsOf(int count) => count >= 6 && count % 2 == 0 ? 2 : 1;

    private static int Apart(int one, int other, int around) => Math.Min(Math.Abs(one - other), around - Math.Abs(one - other));
}
