using System.Collections.Immutable;
using ProcScript.Analysis.Drafting.Parts;
using Sylvan.Data.Csv;

namespace ProcScript.Cli.Sources;

/// <summary>Reads the cells of a list of parts.</summary>
internal static class PartsFile
{
    private const int MostRows = 5000;
    private const int MostTitles = 5;

    /// <summary>The table in a text of comma-separated values; semicolons and tabs are recognised too.</summary>
    /// <exception cref="PartsListException">It is no such text.</exception>
    public static PartsTable Read(string text)
    {
        try
        {
            using StringReader source = new(text);
            using var csv = CsvDataReader.Create(source, new CsvDataReaderOptions { HasHeaders = false });
            var rows = ImmutableArray.CreateBuilder<PartsRow>();
            var headings = ImmutableArray<string>.Empty;
            var title = "";
            while (csv.Read())
            {
                var cells = Enumerable.Range(0, csv.RowFieldCount).Select(csv.GetString).ToImmutableArray();
                if (cells.All(string.IsNullOrWhiteSpace))
                {
                    continue;
                }

                if (headings.IsEmpty)
                {
                    // A title may stand above the headings.
                    if (cells.Count(cell => !string.IsNullOrWhiteSpace(cell)) == 1 && !PartsColumns.IsHeadings(cells) && csv.RowNumber <= MostTitles)
                    {
                        title = title.Length > 0 ? title : cells.First(cell => !string.IsNullOrWhiteSpace(cell)).Trim();
                        continue;
                    }

                    // A comma too many at the end of every line is a habit of some programs.
                    headings = [.. cells.Select(cell => cell.Trim()).Reverse().SkipWhile(cell => cell.Length == 0).Reverse()];
                    continue;
                }

                if (cells.Skip(headings.Length).Any(cell => !string.IsNullOrWhiteSpace(cell)))
                {
                    throw new PartsListException($"has more cells than headings in row {csv.RowNumber}; put a text with a comma in it into double quotes.");
                }

                rows.Add(new PartsRow(csv.RowNumber, cells));
                if (rows.Count > MostRows)
                {
                    throw new PartsListException($"has more than {MostRows} rows; split it by machines.");
                }
            }

            return new PartsTable(headings, rows.ToImmutable()) { Title = title };
        }
        catch (CsvRecordTooLargeException failure)
        {
            throw new PartsListException($"has a row that is too long, row {failure.RowNumber}: most likely a quotation mark is not closed.");
        }
        catch (CsvFormatException failure)
        {
            throw new PartsListException($"is not written as a table in row {failure.RowNumber}: a quotation mark is not closed, or stands within a cell; double it there.");
        }
    }
}
