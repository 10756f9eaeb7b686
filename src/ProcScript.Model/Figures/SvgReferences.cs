using System.Xml.Linq;

namespace ProcScript.Model.Figures;

/// <summary>
/// What of a drawing other parts of it refer to. What is referred to may itself refer to gradients only: they draw nothing, so that no copy is
/// made of copies, which would grow without end.
/// </summary>
internal sealed class SvgReferences
{
    // Drawn out, all copies together are not larger than a large drawing.
    private const long MostCopied = 20_000_000;

    private readonly Dictionary<string, XElement> _byId = new(StringComparer.Ordinal);
    private readonly HashSet<string> _referred = new(StringComparer.Ordinal);

    private SvgReferences()
    {
    }

    /// <summary>Finds them.</summary>
    /// <exception cref="FigureException">The copies are too much.</exception>
    public static SvgReferences In(XElement root)
    {
        SvgReferences references = new();
        foreach (var element in root.Descendants())
        {
            if ((string?)element.Attribute("id") is { Length: > 0 } id)
            {
                references._byId.TryAdd(id, element);
            }
        }

        long copied = 0;
        Dictionary<string, long> sizes = new(StringComparer.Ordinal);
        foreach (var element in root.DescendantsAndSelf())
        {
            foreach (var id in element.Attributes().SelectMany(attribute => Targets(attribute.Name.LocalName, attribute.Value)).Concat(SvgValues.Targets(element.Name.LocalName == "style" ? element.Value : "")))
            {
                references._referred.Add(id);
                if (references._byId.TryGetValue(id, out var target) && !IsGradient(target))
                {
                    if (!sizes.TryGetValue(id, out var size))
                    {
                        sizes.Add(id, size = Size(target));
                    }

                    // A marker is drawn at every corner of a line.
                    copied += size * (target.Name.LocalName == "marker" ? 1 + (((string?)element.Attribute("d") ?? (string?)element.Attribute("points") ?? "").Length / 2) : 1);
                }
            }
        }

        return copied <= MostCopied ? references : throw new FigureException(FigureTrouble.Damaged, "it is made of too many copies");
    }

    /// <summary>Whether something refers to an element.</summary>
    public bool IsReferredTo(XElement element) => (string?)element.Attribute("id") is { } id && _referred.Contains(id);

    /// <summary>Whether something refers to an element of that name.</summary>
    public bool IsReferredTo(string element, string id) => element != "svg" && _referred.Contains(id);

    /// <summary>Whether an element may refer to another.</summary>
    /// <param name="id">The other.</param>
    /// <param name="isReferredTo">Whether the element is referred to itself, or something that it stands in.</param>
    public bool MayBeUsed(string id, bool isReferredTo) => _byId.TryGetValue(id, out var target) && (!isReferredTo || IsGradient(target));

    private static IEnumerable<string> Targets(string name, string value) =>
        name == "href" && value.Trim() is ['#', .. var id] ? [id] : SvgValues.Targets(value);

    private static bool IsGradient(XElement element) => element.Name.LocalName is "linearGradient" or "radialGradient";

    private static long Size(XElement element) => element.DescendantsAndSelf().Sum(one => 20L + one.Attributes().Sum(attribute => attribute.Value.Length));
}
