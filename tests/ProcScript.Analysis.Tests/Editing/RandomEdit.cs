using System.Text.RegularExpressions;
using CsCheck;
using ProcScript.Analysis.Settings;

namespace ProcScript.Analysis.Tests.Editing;

/// <summary>A change of a library as one who writes makes it, by slip or on purpose; what it comes to depends on the library it meets.</summary>
/// <param name="Kind">What is done.</param>
/// <param name="File">Which file.</param>
/// <param name="Place">Where.</param>
/// <param name="Scrap">What is put in.</param>
internal sealed partial record RandomEdit(EditKind Kind, int File, int Place, string Scrap)
{
    private static readonly string[] Scraps =
    [
        " ", "x", "\n", "// a note\n", "// proc: allow PRC5081 because \"it is so\"\n", "{", "}", "\"", "é", "undo ", "stage \"More\" {\n}\n", "refit {\n}\n",
        "\ntool spanner_99 \"a spanner\"\n", "\nprocedure nothing \"Nothing\" on nothing {\n}\n", "use \"../catalog/tools.proc\"\n", "when heater {\n}\n",
    ];

    /// <summary>What may be said of an entry of the catalog, of a part or of a joint in its block, with what is no more than another layout.</summary>
    private static readonly string[] Properties =
    [
        "// a note", "", "torque 9 N.m", "torque 31 N.m", "range 5 .. 25 N.m", "range 20 .. 100 N.m", "size 13 mm", "single use", "captive", "oiled", "time 20 s", "mass 30 kg", "ppe \"gloves\"", "on none",
    ];

    /// <summary>What tools, kinds and parts may be called, so that rules take them for something else.</summary>
    private static readonly string[] Titles = ["13 mm crowfoot", "open spanner", "torque wrench", "M8 × 25 bolt", "thing", "{"];

    /// <summary>What a shop may choose.</summary>
    private static readonly string[] Settings =
    [
        "{}", "{ \"severities\": { \"PRC5081\": \"error\" } }", "{ \"houseTools\": [\"socket_8\"] }", "{ \"severities\": { \"unused-entry\": \"off\" } }",
        "{ \"limits\": { \"onePersonMass\": \"5 kg\", \"repeatedSteps\": 2 } }", "{",
    ];

    /// <summary>Any change.</summary>
    public static Gen<RandomEdit> Any { get; } =
        from kind in Gen.Enum<EditKind>()
        from file in Gen.Int[0, 10_000]
        from place in Gen.Int[0, 1_000_000]
        from scrap in Gen.OneOf<string>(Scraps)
        select new RandomEdit(kind, file, place, scrap);

    /// <summary>Makes it.</summary>
    /// <param name="files">The library.</param>
    /// <param name="before">What the library was before the last change, to go back to.</param>
    public void Apply(SortedDictionary<string, string> files, IReadOnlyDictionary<string, string> before)
    {
        var path = files.Keys.ElementAt(File % files.Count);
        var text = files[path];
        switch (Kind)
        {
            case EditKind.Insert:
                files[path] = text.Insert(Place % (text.Length + 1), Scrap);
                break;
            case EditKind.Delete when text.Length > 0:
                files[path] = text.Remove(Place % text.Length, Math.Min(1 + (Place % 7), text.Length - (Place % text.Length)));
                break;
            case EditKind.DropLine or EditKind.DoubleLine or EditKind.SwapLines:
                files[path] = string.Join('\n', Lines(text.Split('\n')));
                break;
            case EditKind.Rename when Words().Matches(text) is { Count: > 0 } words:
                var word = words[Place % words.Count].Value;
                files[path] = Place % 2 == 0 ? Regex.Replace(text, $@"\b{word}\b", word + "_2") : text.Remove(words[Place % words.Count].Index, word.Length).Insert(words[Place % words.Count].Index, word + "s");
                break;
            case EditKind.Count when Numbers().Matches(text) is { Count: > 0 } numbers:
                var number = numbers[Place % numbers.Count];
                files[path] = text.Remove(number.Index, number.Length).Insert(number.Index, $"{Place % 9}");
                break;
            case EditKind.Property when Blocks().Matches(text) is { Count: > 0 } blocks:
                files[path] = text.Insert(blocks[Place % blocks.Count].Index + 1, $" {Properties[Place % Properties.Length]}\n");
                break;
            case EditKind.Title when Quoted().Matches(text) is { Count: > 0 } titles:
                var title = titles[Place % titles.Count];
                files[path] = text.Remove(title.Index, title.Length).Insert(title.Index, $"\"{Titles[Place % Titles.Length]}\"");
                break;
            case EditKind.Settings when files.ContainsKey(SettingsKeys.FileName):
                files[SettingsKeys.FileName] = Settings[Place % Settings.Length];
                break;
            case EditKind.Remove when files.Count > 1 && Place % 3 == 0:
                files.Remove(path);
                break;
            case EditKind.Copy when files.Count < 12:
                files[path.Replace(".proc", "_2.proc", StringComparison.Ordinal)] = text;
                break;
            case EditKind.Undo:
                files.Clear();
                foreach (var (old, content) in before)
                {
                    files[old] = content;
                }

                break;
        }
    }

    private IEnumerable<string> Lines(string[] lines)
    {
        var line = Place % lines.Length;
        return Kind switch
        {
            EditKind.DropLine => lines.Where((_, index) => index != line),
            EditKind.DoubleLine => lines.Take(line + 1).Concat(lines.Skip(line)),
            _ => line == 0 ? lines : [.. lines[..(line - 1)], lines[line], lines[line - 1], .. lines[(line + 1)..]],
        };
    }

    [GeneratedRegex("[a-z]+(_[a-z0-9]+)+")]
    private static partial Regex Words();

    [GeneratedRegex("(?<=\"[^\"\n]*\" )\\{")]
    private static partial Regex Blocks();

    [GeneratedRegex("\"[^\"\n]*\"(?= \\{)")]
    private static partial Regex Quoted();

    [GeneratedRegex("[0-9]+")]
    private static partial Regex Numbers();
}

/// <summary>What a change does.</summary>
internal enum EditKind
{
    Insert,
    Delete,
    DropLine,
    DoubleLine,
    SwapLines,
    Rename,
    Count,
    Property,
    Title,
    Settings,
    Remove,
    Copy,
    Undo,
}
