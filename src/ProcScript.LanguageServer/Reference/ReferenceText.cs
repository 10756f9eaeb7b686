using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace ProcScript.LanguageServer.Reference;

/// <summary>The reference, read line by line: its tables, its sentences, and the lines of its clean examples.</summary>
internal sealed partial class ReferenceText
{
    private const string Heading = "## ";
    private const string Fence = "```";
    private const string Indent = "    ";
    private const string AsEverywhere = "as everywhere";
    private const string Likewise = "likewise";
    private const string OfActions = "Procedures: what an action says";

    private readonly ImmutableArray<(ReferenceEntry Entry, ImmutableArray<string> Keys)>.Builder _rows = ImmutableArray.CreateBuilder<(ReferenceEntry, ImmutableArray<string>)>();
    private readonly ImmutableArray<(ReferenceEntry Entry, ImmutableArray<string> Keys)>.Builder _asides = ImmutableArray.CreateBuilder<(ReferenceEntry, ImmutableArray<string>)>();
    private readonly ImmutableArray<ReferenceEntry>.Builder _sentences = ImmutableArray.CreateBuilder<ReferenceEntry>();
    private readonly ImmutableArray<(string Section, string Words, string Bare)>.Builder _examples = ImmutableArray.CreateBuilder<(string, string, string)>();
    private readonly List<string> _paragraph = [];
    private readonly List<(string Usage, int Line)> _forms = [];
    private string _before = "";
    private string _above = "";
    private string _section = "";
    private ImmutableArray<string> _header = [];
    private int _paragraphLine;

    /// <summary>Reads the text.</summary>
    public ReferenceText(string text)
    {
        var fence = (string?)null;
        var lines = text.ReplaceLineEndings("\n").Split('\n');
        for (var i = 0; i < lines.Length; i++)
        {
            var line = lines[i];
            if (line.StartsWith(Fence, StringComparison.Ordinal))
            {
                EndParagraph();
                fence = fence is null ? line[Fence.Length..].Trim() : null;
            }
            else if (fence is not null)
            {
                AddExample(fence, line);
            }
            else
            {
                Add(line, i + 1);
            }
        }

        EndParagraph();
        (Rows, Asides, Sentences, Examples) = (_rows.ToImmutable(), _asides.ToImmutable(), _sentences.ToImmutable(), _examples.ToImmutable());
    }

    /// <summary>The rows of tables, each with the words that it explains.</summary>
    public ImmutableArray<(ReferenceEntry Entry, ImmutableArray<string> Keys)> Rows { get; }

    /// <summary>What rows of tables mention besides.</summary>
    public ImmutableArray<(ReferenceEntry Entry, ImmutableArray<string> Keys)> Asides { get; }

    /// <summary>The sentences of the prose that show code.</summary>
    public ImmutableArray<ReferenceEntry> Sentences { get; }

    /// <summary>The lines of the examples that are right, with the section that each stands in, and without its texts.</summary>
    public ImmutableArray<(string Section, string Words, string Bare)> Examples { get; }

    /// <summary>The pieces of code in a text.</summary>
    public static IEnumerable<string> CodeIn(string text) => Code().Matches(text).Select(match => match.Groups["code"].Value);

    private void AddExample(string fence, string line)
    {
        var words = line.Trim();
        if (fence == "proc" && words.Length > 3 && !words.StartsWith("//", StringComparison.Ordinal))
        {
            _examples.Add((_section, words, Aside().Replace(words, "\"\"")));
        }
    }

    private void Add(string line, int number)
    {
        if (line.StartsWith(Heading, StringComparison.Ordinal))
        {
            EndParagraph();
            _section = line[Heading.Length..].Trim();
        }
        else if (line.StartsWith('|'))
        {
            EndParagraph();
            AddRow([.. line.Trim().Trim('|').Split('|').Select(cell => cell.Trim())], number);
        }
        else if (line.StartsWith(Indent, StringComparison.Ordinal) && _paragraph.Count == 0)
        {
            AddForm(line.Trim(), number);
        }
        else if (line.Trim().Length == 0 || line.StartsWith('>'))
        {
            EndParagraph();
        }
        else
        {
            _paragraphLine = _paragraph.Count == 0 ? number : _paragraphLine;
            _paragraph.Add(line.Trim());
        }
    }

    private void AddRow(ImmutableArray<string> cells, int line)
    {
        if (cells.All(cell => cell.All(letter => letter is '-' or ':' or ' ')))
        {
            return;
        }

        if (_header.IsEmpty)
        {
            _header = cells;
            return;
        }

        var sort = _header[0] == "property" && _section == OfActions ? "property of an action" : _header[0];
        switch (_header)
        {
            case ["for", "units"]:
                foreach (var unit in CodeIn(cells[1]))
                {
                    _rows.Add((new ReferenceEntry("unit", unit, $"a unit of {cells[0]}", _section, line), [unit]));
                }

                break;
            case ["strip verb", ..]:
                AddVerb(cells, line);
                break;
            default:
                var means = MeaningOf(cells);
                foreach (var usage in means.StartsWith(AsEverywhere, StringComparison.Ordinal) ? [] : CodeIn(cells[0]))
                {
                    _rows.Add((new ReferenceEntry(sort, usage, means, _section, line), WordsOf(usage)));
                }

                foreach (var usage in cells.Skip(1).SelectMany(CodeIn))
                {
                    _asides.Add((new ReferenceEntry("", usage, $"{cells[0]}: {means}", _section, line), WordsOf(usage)));
                }

                break;
        }
    }

    /// <summary>What a row says: where it has a column for what the word may stand on, that too.</summary>
    private string MeaningOf(ImmutableArray<string> cells)
    {
        var means = cells.Length < 2 ? "" : _header.Contains("means") ? cells[Math.Min(_header.IndexOf("means"), cells.Length - 1)] : cells[1];
        means = means.StartsWith(Likewise, StringComparison.Ordinal) ? _above.Split(';')[0] + means[Likewise.Length..] : means;
        _above = means;
        return _header switch
        {
            [_, "on", "means"] => $"{means} (on: {cells[1]})",
            [_, "needs"] => $"Needs: {means}.",
            _ => means,
        };
    }

    /// <summary>A sentence written out by itself; the prose before it, if it ends in a colon, or behind it says what it means.</summary>
    private void AddForm(string usage, int line)
    {
        if (usage.Contains("PRC", StringComparison.Ordinal) || usage.StartsWith("procscript ", StringComparison.Ordinal))
        {
            return;
        }

        if (_before.EndsWith(':'))
        {
            _rows.Add((new ReferenceEntry("", usage, _before[..^1] + ".", _section, line), WordsOf(usage)));
        }
        else
        {
            _forms.Add((usage, line));
        }
    }

    /// <summary>The row of a strip verb tells of the verb that undoes it too.</summary>
    private void AddVerb(ImmutableArray<string> cells, int line)
    {
        var (on, needs, effect, back) = (cells[1], cells[2], cells[3], string.Concat(CodeIn(cells[4]).Take(1)));
        foreach (var usage in CodeIn(cells[0]).Where(code => code.Contains(' ', StringComparison.Ordinal)).Take(1))
        {
            var verb = WordsOf(usage)[0];
            _rows.Add((new ReferenceEntry("strip verb", usage, $"on: {on}. Needs: {needs}. After it: {effect}." + (back.Length > 0 ? $" The refit has `{back}`." : ""), _section, line), [verb]));
            if (back.Length > 0 && back != verb)
            {
                _rows.Add((new ReferenceEntry("refit verb", usage.Replace(verb, back, StringComparison.Ordinal), $"on: {on}. It undoes `{usage}`.", _section, line), [back]));
            }
        }
    }

    private void EndParagraph()
    {
        _header = _paragraph.Count > 0 ? [] : _header;
        var sentences = Break().Split(string.Join(' ', _paragraph));
        if (_paragraph.Count > 0)
        {
            foreach (var (usage, line) in _forms)
            {
                _rows.Add((new ReferenceEntry("", usage, Strong().Replace(sentences[0].Trim(), "$1"), _section, line), WordsOf(usage)));
            }

            _forms.Clear();
            _before = sentences[^1].Trim();
        }

        foreach (var sentence in sentences.Where(sentence => Code().IsMatch(sentence)))
        {
            _sentences.Add(new ReferenceEntry("", "", Strong().Replace(sentence.Trim(), "$1"), _section, _paragraphLine));
        }

        _paragraph.Clear();
    }

    private static ImmutableArray<string> WordsOf(string code) => [.. Word().Matches(code).Select(match => match.Value).DefaultIfEmpty(code)];

    [GeneratedRegex("\"[^\"]*\"|//.*")]
    private static partial Regex Aside();

    [GeneratedRegex("`(?<code>[^`]+)`")]
    private static partial Regex Code();

    [GeneratedRegex(@"(?<=[.:])\s+(?=[A-Z`*])")]
    private static partial Regex Break();

    [GeneratedRegex(@"\*\*?([^*]+)\*\*?")]
    private static partial Regex Strong();

    [GeneratedRegex(@"\p{L}[\p{L}\p{N}_]*")]
    private static partial Regex Word();
}
