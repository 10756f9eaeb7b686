using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using System.Text;
using ProcScript.Analysis.Bolts;
using ProcScript.Model.Names;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Drafting;

/// <summary>Declares the kinds, tools and supplies that a draft needs and no file in sight has.</summary>
/// <param name="inSight">What the machine's file sees, by name.</param>
/// <param name="elsewhere">The files of the library that declare a catalog entry of a name, out of sight.</param>
/// <param name="facts">What is known beside the steps.</param>
internal sealed partial class DraftedKinds(
    IReadOnlyDictionary<string, DeclarationSyntax> inSight, Func<string, IReadOnlyList<string>> elsewhere, DraftFacts facts)
{
    private readonly OrderedDictionary<string, string> _entries = new(StringComparer.Ordinal);

    /// <summary>The declarations, as text.</summary>
    public IEnumerable<string> Entries => _entries.Values;

    /// <summary>The files to be used, since they declare what is named.</summary>
    public SortedSet<string> Uses { get; } = new(StringComparer.Ordinal);

    /// <summary>What is in the way, in words.</summary>
    public List<string> Troubles { get; } = [];

    /// <summary>Sees to it that the kind of a joint is there; names one where the step does not.</summary>
    public void Provide(DraftedItem joint)
    {
        if (joint.Kind.Length == 0)
        {
            joint.Kind = Free(DraftWords.Name(string.Join(' ', CanonicalName.Base(joint.Name).Split('_')[..^1].Append(DraftWords.Singular(DraftWords.LastWord(joint.Name))))));
            Declare(joint.Kind, Kind(joint, DraftWords.Words(joint.Kind), []));
            return;
        }

        if (inSight.TryGetValue(joint.Kind, out var declared))
        {
            if (declared is not CatalogSyntax { Keyword.Text: not ("tool" or "supply" or "certificate") })
            {
                Troubles.Add($"`{joint.Kind}` is declared already, and it is no kind: `{joint.Name}` needs another name for its kind");
            }
        }
        else if (!Finds(joint.Kind))
        {
            var known = Metric().Match(joint.Kind) is { Success: true } size ? Sized(joint, size) : (Title: DraftWords.Words(joint.Kind), Properties: ImmutableArray<string>.Empty);
            Declare(joint.Kind, Kind(joint, known.Title, known.Properties));
        }
    }

    /// <summary>Sees to it that a tool or a supply is there.</summary>
    public void Provide(string keyword, string name)
    {
        if (inSight.ContainsKey(name) || Finds(name))
        {
            return;
        }

        var fact = facts.Catalog.GetValueOrDefault(name);
        var (title, block) = fact is not null ? (fact.Title, Block(fact.Properties))
            : keyword == "tool" && ToolSize().Match(name) is { Success: true } tool ? ($"{tool.Groups[2]} mm {tool.Groups[1].Value.Replace('_', ' ')}", $" {{ size {tool.Groups[2]} mm }}")
            : (DraftWords.Words(name), "");
        Declare(name, $"{keyword} {name} {DraftWords.Quoted(title)}{block}");
    }

    private string Kind(DraftedItem joint, string title, ImmutableArray<string> properties)
    {
        var fact = facts.Catalog.GetValueOrDefault(joint.Kind);
        ImmutableArray<string> known = [.. properties, .. fact?.Properties ?? []];
        title = fact?.Title ?? title;
        // Where the thread is known, rules ask for the torque and the tool.
        var asked = joint.Sort switch
        {
            ItemSort.Fastener when known.Any(property => property.StartsWith("thread", StringComparison.Ordinal)) => "",
            ItemSort.Fastener => $"what is the {title}: its thread, its tool, its torque?",
            ItemSort.Clip => $"what is the {title}, and how does it come off?",
            ItemSort.Connector => $"what is the {title}, and how is it released?",
            ItemSort.Line => $"what is the {title}, which tool opens it, and which seals are new each time?",
            _ => $"what is the {title}, what is it opened with, and what closes it again?",
        };
        return $"{ItemSorts.Keyword(joint.Sort)} {joint.Kind} {DraftWords.Quoted(title)}{Block(known)}"
            + (asked.Length == 0 ? "" : $"  {DraftWriter.Question(asked)}");
    }

    /// <summary>A metric designation without a pitch means the coarse one (ISO 965-1, from memory).</summary>
    private static (string Title, ImmutableArray<string> Properties) Sized(DraftedItem joint, Match size)
    {
        var noun = DraftWords.Singular(DraftWords.LastWord(joint.Name));
        noun = ItemSorts.OfWord(noun) == ItemSort.Fastener ? noun : "bolt";
        var (diameter, length) = (size.Groups[1].Value, size.Groups[2].Value);
        var properties = ImmutableArray.CreateBuilder<string>();
        if (ThreadSeries.CoarsePitch(double.Parse(diameter, CultureInfo.InvariantCulture)) is { } pitch)
        {
            properties.Add(string.Create(CultureInfo.InvariantCulture, $"thread M{diameter}x{pitch}"));
        }

        if (length.Length > 0)
        {
            properties.Add($"length {length} mm");
        }

        return ($"M{diameter}{(length.Length > 0 ? $" × {length}" : "")} {noun}", properties.ToImmutable());
    }

    /// <summary>An entry of this name somewhere in the library, out of sight: its file is used. Of several, none is meant more than the others.</summary>
    private bool Finds(string name)
    {
        if (elsewhere(name) is not [var path])
        {
            return false;
        }

        Uses.Add(path);
        return true;
    }

    private string Free(string name)
    {
        name = name.Length == 0 || !NameText.IsName(name) ? name + "_kind" : name;
        var free = name;
        for (var number = 2; inSight.ContainsKey(free) || _entries.ContainsKey(free) || elsewhere(free).Count > 0; number++)
        {
            free = string.Create(CultureInfo.InvariantCulture, $"{name}_{number}");
        }

        return free;
    }

    private void Declare(string name, string text) => _entries.TryAdd(name, text);

    private static string Block(ImmutableArray<string> properties) => properties.IsEmpty ? "" : new StringBuilder(" { ").AppendJoin("  ", properties).Append(" }").ToString();

    [GeneratedRegex(@"^[mM](\d{1,2})(?:x(\d{1,3}))?$", RegexOptions.CultureInvariant)]
    private static partial Regex Metric();

    [GeneratedRegex(@"^(socket|spanner|open|wrench|hex|hex_key)_(\d{1,2})$", RegexOptions.CultureInvariant)]
    private static partial Regex ToolSize();
}
