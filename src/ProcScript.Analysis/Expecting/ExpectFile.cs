using System.Collections.Immutable;
using System.Globalization;
using ProcScript.Model.Sources;

namespace ProcScript.Analysis.Expecting;

/// <summary>
/// A file in which a library says what stays so. A line is a sentence, and one that ends in a comma goes on; <c>//</c> starts a comment. Sections begin with <c>pack JOB</c> or
/// <c>file PATH</c>, what is expected of them stands below.
/// </summary>
public sealed class ExpectFile
{
    /// <summary>How the names of such files end.</summary>
    public const string Extension = ".expect";

    private const string Comment = "//";

    private ExpectFile(string path, string text, ImmutableArray<string> lines)
    {
        Path = path;
        Text = text;
        Lines = lines;
    }

    /// <summary>The file, relative to the library root.</summary>
    public string Path { get; }

    /// <summary>Its text.</summary>
    public string Text { get; }

    /// <summary>Its lines, without their ends.</summary>
    public ImmutableArray<string> Lines { get; }

    /// <summary>What is expected, in the order of the text.</summary>
    public ImmutableArray<Expectation> Expectations { get; private set; } = [];

    /// <summary>What it is expected of, in the order of the text; some may stand alone.</summary>
    public ImmutableArray<ExpectSection> Sections { get; private set; } = [];

    /// <summary>What is expected of a section.</summary>
    public IEnumerable<Expectation> Of(ExpectSection section) => Expectations.Where(one => one.Section == section);

    /// <summary>The last lines of the sentences that take several, by their first ones; counted from 0.</summary>
    internal Dictionary<int, int> LastLines { get; } = [];

    /// <summary>The lines that are not understood, with why and what to write; counted from 0.</summary>
    public ImmutableArray<(int Line, string Message)> Problems { get; private set; } = [];

    /// <summary>Reads a text.</summary>
    /// <param name="path">The file, relative to the library root.</param>
    /// <param name="text">Its text.</param>
    public static ExpectFile Parse(string path, string text)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(text);
        var file = new ExpectFile(path, text, [.. text.Split('\n').Select(line => line.TrimEnd('\r'))]);
        var (expectations, sections, problems) = (new List<Expectation>(), new List<ExpectSection>(), new List<(int, string)>());
        ExpectSection? section = null;
        var next = 0;
        for (var at = 0; at < file.Lines.Length; at = next)
        {
            var words = file.Sentence(at, out next).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
            if (words.Length == 0)
            {
                continue;
            }

            try
            {
                if (words[0] is "pack" or "file")
                {
                    section = words[0] == "pack" ? Pack(at, words) : File(at, words, path);
                    sections.Add(section);
                }
                else
                {
                    expectations.Add(section switch
                    {
                        PackSection pack => OfPack(at, words, pack),
                        FileSection of => OfFile(at, words, of),
                        _ => throw new FormatException("what it is about is missing; write 'pack JOB' or 'file PATH' above it"),
                    });
                }
            }
            catch (FormatException problem)
            {
                problems.Add((at, problem.Message));
            }
        }

        (file.Expectations, file.Sections, file.Problems) = ([.. expectations], [.. sections], [.. problems]);
        return file;
    }

    /// <summary>A line without its comment.</summary>
    internal static string SentenceOf(string line) => line.IndexOf(Comment, StringComparison.Ordinal) is var at and >= 0 ? line[..at] : line;

    /// <summary>The sentence that begins in a line.</summary>
    private string Sentence(int line, out int next)
    {
        var sentence = SentenceOf(Lines[line]);
        for (next = line + 1; sentence.TrimEnd().EndsWith(',') && next < Lines.Length; next++)
        {
            sentence += " " + SentenceOf(Lines[next]);
            LastLines[line] = next;
        }

        return sentence;
    }

    private static PackSection Pack(int line, string[] words)
    {
        if (words.Length < 2)
        {
            throw new FormatException("name the job, as its folder of cards is named: 'pack seat_out', 'pack door_out-left with rail'");
        }

        var without = Array.IndexOf(words, "without");
        var with = Array.IndexOf(words, "with");
        var (has, lacks) = (with < 0 ? [] : Names(words[(with + 1)..(without > with ? without : words.Length)]), without < 0 ? [] : Names(words[(without + 1)..]));
        return (with < 0 || with == 2) && (with >= 0 || without < 0 || without == 2) && (words.Length == 2 || with == 2 || without == 2)
            && has.IsEmpty == with < 0 && lacks.IsEmpty == without < 0
            ? new PackSection(line, words[1], has, lacks)
            : throw new FormatException($"'{string.Join(' ', words[2..])}' is not understood here; after the job stands nothing, or its options: 'with rail', 'with rail, gas', 'without gas', 'with rail without gas'");
    }

    private static FileSection File(int line, string[] words, string path)
    {
        if (words.Length < 2)
        {
            throw new FormatException("name the file, from the folder of this one: 'file cab.proc'");
        }

        var named = string.Join(' ', words[1..]);
        var folder = path.LastIndexOf('/') is var at and >= 0 ? path[..(at + 1)] : "";
        return new FileSection(line, LibraryPath.Normalize(folder + named) ?? throw new FormatException($"'{named}' leads out of the library"));
    }

    private static Expectation OfPack(int line, string[] words, PackSection pack)
    {
        var rest = words[1..];
        switch (words[0])
        {
            case "not" when rest is ["proven"]:
                return new NotProvenExpectation(line, pack);
            case "time":
                return Time(line, rest, pack);
            case var phase when PackFacts.Phases.Contains(phase):
                var steps = Whole(string.Join(' ', rest).Split(',', StringSplitOptions.TrimEntries)).ToImmutableArray();
                return steps.IsEmpty || steps.Any(step => !step.Contains(' ', StringComparison.Ordinal))
                    ? throw new FormatException($"a step is a verb and an item, with commas between steps: '{phase} undo seat_bolts, remove seat'")
                    : new OrderExpectation(line, pack, phase, steps);
            case var what when PackFacts.IsCounted(what):
                return rest is [var written] && int.TryParse(written, NumberStyles.None, CultureInfo.InvariantCulture, out var count)
                    ? new CountExpectation(line, pack, what, count)
                    : throw new FormatException($"write how many: '{what} 14'");
            default:
                throw new FormatException(
                    $"'{words[0]}' can't be expected of a pack; there are: {string.Join(", ", [.. PackFacts.Phases, "time", .. PackFacts.Counted, "not proven"])}");
        }
    }

    /// <summary>Puts together again what a comma within an index has cut: <c>remove lamp[front</c>, <c>left]</c>.</summary>
    private static IEnumerable<string> Whole(IEnumerable<string> pieces)
    {
        string? open = null;
        foreach (var piece in pieces)
        {
            var step = open is null ? piece : PackFacts.Written($"{open},{piece}");
            open = step.Contains('[', StringComparison.Ordinal) && !step.Contains(']', StringComparison.Ordinal) ? step : null;
            if (open is null)
            {
                yield return step;
            }
        }
    }

    private static TimeExpectation Time(int line, string[] words, PackSection pack)
    {
        var band = string.Join(' ', words).Replace("..", " .. ", StringComparison.Ordinal).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return band is [var least, "..", var most, var unit]
            && double.TryParse(least, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var from)
            && double.TryParse(most, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var to)
            && (unit switch { "min" => 1.0, "h" => 60.0, _ => (double?)null }) is { } minutes
            && from <= to
            ? new TimeExpectation(line, pack, from * minutes, to * minutes)
            : throw new FormatException("a time is a band in min or h, the lesser first: 'time 20 .. 35 min'");
    }

    private static Expectation OfFile(int line, string[] words, FileSection file) => words switch
    {
        ["nothing"] => new NoFindingExpectation(line, file),
        [var code] when IsRule(code) => new FindingExpectation(line, file, code, null),
        [var code, "at", var at] when IsRule(code) && int.TryParse(at, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number > 0 =>
            new FindingExpectation(line, file, code, number),
        [var code, ..] when !IsRule(code) => throw new FormatException($"there is no rule '{code}'; write its code and its line, 'PRC3002 at 45', or 'nothing'"),
        _ => throw new FormatException("write a rule's code and the line of its finding, 'PRC3002 at 45', or 'nothing'"),
    };

    private static bool IsRule(string code) => RuleCatalog.Find(code)?.Info.Code == code;

    private static ImmutableArray<string> Names(string[] words) =>
        [.. string.Join(' ', words).Split(',').Select(name => name.Trim()).Where(name => name.Length > 0)];
}
