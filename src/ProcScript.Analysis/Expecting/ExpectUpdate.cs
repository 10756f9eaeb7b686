namespace ProcScript.Analysis.Expecting;

/// <summary>Writes files of expectations anew, so that the library meets them.</summary>
public static class ExpectUpdate
{
    private const string Indentation = "  ";

    private const int MostColumns = 120;

    /// <summary>The text of a file with every line put right that can be; indentation, comments and all other lines stay.</summary>
    /// <param name="file">The file.</param>
    /// <param name="failures">What is not met in it.</param>
    public static string Apply(ExpectFile file, IEnumerable<ExpectFailure> failures)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(failures);
        var right = failures.Where(failure => failure.AsIs is not null).ToDictionary(failure => failure.Line, failure => failure.AsIs!);
        var end = file.Text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        var goesOn = right.Keys.Where(file.LastLines.ContainsKey).SelectMany(line => Enumerable.Range(line + 1, file.LastLines[line] - line)).ToHashSet();
        return string.Join(end, file.Lines.SelectMany((line, at) => goesOn.Contains(at) ? []
            : !right.TryGetValue(at, out var lines) ? [line]
            : file.Sections.Any(section => section.Line == at) ? [line, .. lines.SelectMany(one => Laid(Indentation, one, ""))]
            : Replaced(line, lines)));
    }

    private static IEnumerable<string> Replaced(string line, IReadOnlyList<string> lines)
    {
        var sentence = ExpectFile.SentenceOf(line);
        var indentation = sentence[..^sentence.TrimStart().Length];
        var behind = sentence[sentence.TrimEnd().Length..] + line[sentence.Length..];
        return lines.SelectMany((one, at) => Laid(indentation, one, at == 0 ? behind : ""));
    }

    /// <summary>A sentence on as many lines as it takes.</summary>
    private static IEnumerable<string> Laid(string indentation, string sentence, string behind)
    {
        var line = indentation;
        foreach (var (at, piece) in sentence.Split(", ").Index())
        {
            if (at > 0 && line.Length + piece.Length + 3 > MostColumns)
            {
                yield return line + ",";
                line = indentation + Indentation + piece;
            }
            else
            {
                line += at == 0 ? piece : ", " + piece;
            }
        }

        yield return line + behind;
    }
}
