namespace ProcScript.Generate.TextMate;

/// <summary>The regular expressions that the patterns are made of, as the highlighters' engine reads them.</summary>
/// <param name="groups">The words of the language.</param>
internal sealed class Expression(WordGroups groups)
{
    private const string Letter = @"\p{L}\p{Nl}\p{No}_";
    private const string Begin = $"(?<![{Letter}0-9])";
    private const string End = $"(?![{Letter}0-9])";

    public const string Space = @"\s+";
    public const string Integer = "[0-9]+";
    public const string Number = @"(?:[0-9]+\.[0-9]+|[0-9]+(?:\s+[0-9]+)?/[0-9]+|[0-9]+)";

    /// <summary>An index behind a name, as a whole.</summary>
    private const string Index = @"(?:\[[^\]\n]*\])";

    private const string RawName = $"{Begin}[{Letter}][{Letter}0-9]*";

    /// <summary>Any name: a word that is not reserved.</summary>
    public string Name { get; } = $"(?!{Word(groups.All.Except(groups.Names))}){RawName}";

    /// <summary>A name that is no word of the language at all.</summary>
    public string PlainName { get; } = $"(?!{Word(groups.All)}){RawName}";

    /// <summary>A name with its index.</summary>
    public string Reference => $"{Name}{Index}?";

    /// <summary>References with commas between.</summary>
    public string References => List(Reference);

    /// <summary>Where a control stands.</summary>
    public string Position => $"(?:{Word("on", "in", "to", "at")}|{Value})";

    /// <summary>What a variable stands for.</summary>
    public string Value => $"(?:{Name}|{Integer}{End})";

    /// <summary>The values of a variable: two ends, or a list.</summary>
    public string Values => $@"(?:{Integer}\s*\.\.\s*{Integer}|{List(Value)})";

    /// <summary>A unit, with its parts.</summary>
    public string Unit => $@"(?:%|°(?:\s*{PlainName})?|{UnitName}(?:\s*[.·⋅/]\s*{UnitName})*)";

    private string UnitName => $@"(?:{PlainName}|{Word("in")}(?!\s+{Word("background")}))";

    /// <summary>One of some words, whole.</summary>
    public static string Word(params IEnumerable<string> words) => $"{Begin}(?:{string.Join('|', words)}){End}";

    /// <summary>One or several, with commas between.</summary>
    public static string List(string one, string times = "*") => $@"{one}(?:\s*,\s*{one}){times}";
}
