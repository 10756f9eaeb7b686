using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using ProcScript.Analysis.Drafting.Notes;

namespace ProcScript.Analysis.Drafting.Parts;

/// <summary>Reads a list of parts into items of a machine.</summary>
internal sealed partial class PartsReader
{
    private readonly ImmutableArray<(PartsColumn Column, string Unit)> _columns;
    private readonly NoteNames _names = new();
    private readonly List<DraftedItem> _items = [];
    private readonly Dictionary<string, CatalogFacts> _catalog = new(StringComparer.Ordinal);
    private readonly List<string> _tools = [];

    /// <summary>Takes the headings.</summary>
    /// <exception cref="PartsListException">They cannot be read.</exception>
    public PartsReader(ImmutableArray<string> headings) => _columns = PartsColumns.Of(headings);

    /// <summary>The items, in the order of the list.</summary>
    public IReadOnlyList<DraftedItem> Items => _items;

    /// <summary>What is known of tools and kinds.</summary>
    public ImmutableDictionary<string, CatalogFacts> Catalog => _catalog.ToImmutableDictionary(StringComparer.Ordinal);

    /// <summary>The tools that the list names.</summary>
    public IEnumerable<string> Tools => _tools.Distinct(StringComparer.Ordinal);

    /// <summary>Reads all rows. A row may name a part that stands further down.</summary>
    /// <exception cref="PartsListException">A row cannot be read.</exception>
    public void Read(ImmutableArray<PartsRow> rows)
    {
        var parts = rows.Where(row => !IsHardware(row)).ToList();
        foreach (var row in parts)
        {
            Part(row);
        }

        var last = "";
        foreach (var row in rows)
        {
            if (IsHardware(row))
            {
                Hardware(row, last);
            }
            else
            {
                last = _names.Of(Name(row), ItemSort.Part);
                Relate(row, last);
            }
        }
    }

    private bool IsHardware(PartsRow row) => Sort(Name(row)) is { } sort && ItemSorts.IsJoint(sort);

    private static ItemSort? Sort(string name) => name.Split(' ', StringSplitOptions.RemoveEmptyEntries) is [.., var last] ? ItemSorts.OfWord(last) : null;

    /// <summary>What the row is called; lists write <c>Bolt, M8 x 20</c> where people say <c>M8 x 20 bolt</c>.</summary>
    private string Name(PartsRow row)
    {
        var name = Cell(row, PartsColumn.Part);
        if (name.Length == 0)
        {
            throw new PartsListException($"names no part in line {row.Line}; fill the column, or take the line out.");
        }

        return name.IndexOf(',', StringComparison.Ordinal) is > 0 and var comma ? $"{name[(comma + 1)..].Trim()} {name[..comma].Trim().ToLowerInvariant()}" : name;
    }

    private string Cell(PartsRow row, PartsColumn column)
    {
        var at = 0;
        while (at < _columns.Length && _columns[at].Column != column)
        {
            at++;
        }

        return at < Math.Min(_columns.Length, row.Cells.Length) ? row.Cells[at].Trim() : "";
    }

    private string Quantity(PartsRow row, PartsColumn column, string usual)
    {
        var cell = Plain(Cell(row, column));
        var unit = _columns.First(one => one.Column == column).Unit;
        return cell.Length == 0 || cell.Any(char.IsLetter) ? cell : $"{cell} {(unit.Length > 0 ? unit : usual)}";
    }

    /// <summary>A figure as the language has it: of two signs the last one is the point, and the others part thousands.</summary>
    private static string Plain(string cell) => Figure().Replace(cell, match =>
    {
        var (figure, last) = (match.Value, match.Value.LastIndexOfAny(['.', ',']));
        var isOne = figure.IndexOfAny(['.', ',']) == last;
        return isOne ? figure.Replace(',', '.')
            : figure[..last].Contains(figure[last], StringComparison.Ordinal) ? string.Concat(figure.Where(char.IsDigit))
            : string.Concat(figure[..last].Where(char.IsDigit)) + "." + figure[(last + 1)..];
    });

    /// <summary>Whether a figure may be read in two ways: one sign, and three digits behind it.</summary>
    private static bool IsDoubtful(string cell) => Doubtful().IsMatch(cell);

    /// <summary>How many; 0 where nothing is said. <c>4 pcs</c>, <c>4.0</c> and <c>1,000</c> are numbers too.</summary>
    private int Count(PartsRow row)
    {
        var cell = Cell(row, PartsColumn.Count);
        var number = Counted().Match(cell) is { Success: true } counted ? counted.Groups[1].Value.Replace(",", "", StringComparison.Ordinal).Replace(".", "", StringComparison.Ordinal) : cell;
        return cell.Length == 0 ? 0
            : int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count is > 0 and < 10_000 ? count
            : throw new PartsListException($"has \"{cell}\" for a count in line {row.Line}; write a whole number.");
    }

    private void Part(PartsRow row)
    {
        var name = _names.Of(Name(row), ItemSort.Part);
        if (_items.Any(item => item.Name == name))
        {
            throw new PartsListException($"names \"{Name(row)}\" a second time in line {row.Line}; give each part a name of its own, such as left and right.");
        }

        var properties = ImmutableArray.CreateBuilder<string>();
        var questions = ImmutableArray.CreateBuilder<string>();
        if (_columns.Any(one => one.Column == PartsColumn.Mass) && Quantity(row, PartsColumn.Mass, "kg") is { Length: > 0 } written)
        {
            if (IsDoubtful(Cell(row, PartsColumn.Mass)))
            {
                questions.Add($"what does the {Name(row)} weigh? The list says {Cell(row, PartsColumn.Mass)}, which may be read in two ways");
            }
            else if (NoteFigures.Of(written).Mass is { Length: > 0 } mass)
            {
                properties.Add($"mass {mass}");
            }
            else
            {
                questions.Add($"what does the {Name(row)} weigh? The list says {written}");
            }
        }

        if (DoubtfulCount().IsMatch(Cell(row, PartsColumn.Count)))
        {
            questions.Add($"how many of the {Name(row)} are there? The list says {Cell(row, PartsColumn.Count)}");
        }
        else if (Count(row) is > 1 and var count)
        {
            questions.Add(string.Create(CultureInfo.InvariantCulture, $"the list has {count} of the {Name(row)}: which is which?"));
        }

        Comments(row, properties);
        _items.Add(new DraftedItem(name, ItemSort.Part, new ItemFacts { Title = Name(row), Properties = properties.ToImmutable(), Questions = questions.ToImmutable() }));
    }

    /// <summary>What has no place of its own in the language stays beside the part.</summary>
    private void Comments(PartsRow row, ImmutableArray<string>.Builder properties)
    {
        if (Cell(row, PartsColumn.Number) is { Length: > 0 } number)
        {
            properties.Insert(0, $"// No. {number} of the list");
        }

        properties.AddRange(Others(row).Select(other => $"// {other}"));

        if (Cell(row, PartsColumn.Note) is { Length: > 0 } note)
        {
            properties.Add($"// {note.ReplaceLineEndings(" ")}");
        }
    }

    /// <summary>What columns say that have no place in the language, and further numbers.</summary>
    private IEnumerable<string> Others(PartsRow row)
    {
        var number = _columns.Select(one => one.Column).ToList().IndexOf(PartsColumn.Number);
        return
            from one in _columns.Index()
            where one.Item.Column == PartsColumn.Other || (one.Item.Column == PartsColumn.Number && one.Index != number)
            where one.Index < row.Cells.Length && row.Cells[one.Index].Trim().Length > 0
            select $"{(one.Item.Unit.Length > 0 ? one.Item.Unit : "number")}: {row.Cells[one.Index].Trim().ReplaceLineEndings(" ")}";
    }

    private void Relate(PartsRow row, string name)
    {
        var part = _items.First(item => item.Name == name);
        if (Cell(row, PartsColumn.In) is { Length: > 0 } parent && !Place(part, parent))
        {
            part.Questions.Add($"the list says that the {part.Title} is in the {parent}: what is that?");
        }

        foreach (var hider in Cell(row, PartsColumn.Behind).Split([';', ',', '/'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (Find(hider) is { } found && found != part && !Hides(part.Name, found.Name))
            {
                part.Guesses.Add(($"behind {found.Name}", ""));
            }
            else
            {
                part.Questions.Add($"the list says that the {part.Title} is behind the {hider}: what is that?");
            }
        }

        if (Cell(row, PartsColumn.HeldBy) is { Length: > 0 } held)
        {
            foreach (var hardware in held.Split([';', '+'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
            {
                Joint(row, $"{hardware} {Cell(row, PartsColumn.Size)}".Trim(), part, 0, []);
            }
        }
    }

    private void Hardware(PartsRow row, string before)
    {
        var questions = new List<string>();
        var owner = Cell(row, PartsColumn.In) is { Length: > 0 } parent ? Find(parent) : null;
        if (owner is null)
        {
            owner = Find(before);
            if (owner is null)
            {
                owner = new DraftedItem(_names.Of("body", ItemSort.Part), ItemSort.Part, ItemFacts.None);
                _items.Add(owner);
            }

            questions.Add($"what {DraftWords.Does(Name(row))} the {Name(row)} hold? The list does not say");
        }

        Joint(row, $"{Name(row)} {Cell(row, PartsColumn.Size)}".Trim(), owner, Count(row), questions);
        var joint = _items[^1];
        joint.Remarks.AddRange(
            from remark in Others(row)
                .Prepend(Cell(row, PartsColumn.Note).ReplaceLineEndings(" "))
                .Prepend(Cell(row, PartsColumn.Number) is { Length: > 0 } number ? $"No. {number} of the list" : "")
                .Append(Cell(row, PartsColumn.Mass) is { Length: > 0 } mass ? $"mass {mass}" : "")
            where remark.Length > 0
            select remark);
    }

    private void Joint(PartsRow row, string words, DraftedItem part, int count, List<string> questions)
    {
        var figures = NoteFigures.Of(words);
        var noun = NoteObject.Bare(figures.Rest);
        noun = noun.Length == 0 ? "bolts" : noun;
        var sort = Sort(noun) is { } known && ItemSorts.IsJoint(known) ? known : ItemSort.Fastener;
        count = count > 0 ? count : figures.Count;
        var properties = ImmutableArray.CreateBuilder<string>();
        if (_columns.Any(one => one.Column == PartsColumn.Torque) && Quantity(row, PartsColumn.Torque, "N.m") is { Length: > 0 } written && sort == ItemSort.Fastener)
        {
            if (NoteFigures.Of(written).Torque is { Length: > 0 } torque)
            {
                properties.Add($"torque {torque}");
            }
            else
            {
                questions.Add($"how tight {DraftWords.Is(noun)} the {noun}? The list says {written}");
            }
        }

        if (Cell(row, PartsColumn.Tool) is { Length: > 0 } tool)
        {
            properties.Add($"tool {Tool(tool)}");
        }

        if (sort == ItemSort.Fastener && Sort(noun) is null)
        {
            questions.Add($"what is the {noun}?");
        }

        var name = _names.Of($"{part.Title} {noun}", sort);
        for (var number = 2; _items.Any(item => item.Name == name); number++)
        {
            name = _names.Of(string.Create(CultureInfo.InvariantCulture, $"{part.Title} {noun} {number}"), sort);
        }

        _items.Add(new DraftedItem(name, sort, new ItemFacts { Properties = properties.ToImmutable(), Questions = [.. questions] })
        {
            Count = count,
            Kind = figures.Kind,
            Owner = part.Name,
        });
        if (count == 0 && DraftWords.IsPlural(noun))
        {
            _items[^1].Questions.Add($"how many {noun}?");
        }
    }

    private string Tool(string words)
    {
        var (name, facts) = NoteTools.Of(words);
        _catalog.TryAdd(name, facts);
        _tools.Add(name);
        return name;
    }

    /// <summary>Puts a part into another; not into itself, however far round.</summary>
    private bool Place(DraftedItem part, string words)
    {
        if (Find(words) is not { } parent)
        {
            return false;
        }

        for (var around = parent; around is not null; around = _items.Find(item => item.Name == around.Owner))
        {
            if (around == part)
            {
                return false;
            }
        }

        part.Owner = parent.Name;
        return true;
    }

    private bool Hides(string hider, string hidden) => hider == hidden
        || _items.First(item => item.Name == hidden).Guesses.Any(guess => Hides(hider, guess.Clause["behind ".Length..]));

    private DraftedItem? Find(string words)
    {
        var name = DraftWords.Name(words);
        return name.Length == 0 ? null : _items.Find(item => item.Sort == ItemSort.Part && item.Name == name);
    }

    [GeneratedRegex(@"\d+(?:[.,]\d+)+", RegexOptions.CultureInvariant)]
    private static partial Regex Figure();

    [GeneratedRegex(@"^\D*[1-9]\d{0,2},\d{3}(?![.,\d])", RegexOptions.CultureInvariant)]
    private static partial Regex Doubtful();

    // One, with three places behind the point, or a thousand.
    [GeneratedRegex(@"^\d{1,3}[.,]000$", RegexOptions.CultureInvariant)]
    private static partial Regex DoubtfulCount();

    [GeneratedRegex(@"^(?:x\s*)?(\d+|\d{1,3}(?:[.,]\d{3})+)(?:[.,]0+)?\s*(?:x|off|no\.?|pcs?\.?|pieces?|each|ea\.?|stk\.?|stück|st\.?|szt\.?|uds?\.?)?$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Counted();
}
