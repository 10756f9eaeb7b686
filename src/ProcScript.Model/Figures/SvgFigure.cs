using System.Globalization;
using System.Xml;
using System.Xml.Linq;

namespace ProcScript.Model.Figures;

/// <summary>
/// A drawing, read with no document type and no entity and written anew from what <see cref="SvgAllowed"/> lists. It refers to nothing outside
/// itself, runs nothing, and cannot be made of copies of copies.
/// </summary>
internal sealed class SvgFigure
{
    private const int MostElements = 20_000;
    private const int DeepestElement = 100;

    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";
    private static readonly XNamespace Page = "http://www.w3.org/1999/xhtml";
    private static readonly XNamespace Link = "http://www.w3.org/1999/xlink";

    private readonly SvgReferences _references;
    private readonly List<string> _removed = [];

    private SvgFigure(XElement root) => _references = SvgReferences.In(root);

    /// <summary>Reads it.</summary>
    public static ExaminedFigure Read(byte[] bytes, FigureLimits limits)
    {
        var document = Load(bytes);
        if (document.Root is not { } root || root.Name != Svg + "svg")
        {
            throw new FigureException(FigureTrouble.WrongType, "a text with marks, and no drawing");
        }

        var (width, height) = SvgSize.Of(root);
        FigureReader.Measure((long)Math.Ceiling(width), (long)Math.Ceiling(height), limits);
        SvgFigure drawing = new(root);
        foreach (var _ in document.Nodes().OfType<XProcessingInstruction>().Where(one => one.Target == "xml-stylesheet"))
        {
            drawing._removed.Add("a style sheet of its own file");
        }

        var safe = drawing.Safe(root, isReferredTo: false)!;
        safe.SetAttributeValue("id", null);
        safe.SetAttributeValue("viewBox", (string?)safe.Attribute("viewBox") ?? string.Create(CultureInfo.InvariantCulture, $"0 0 {width} {height}"));
        safe.SetAttributeValue("width", width.ToString(CultureInfo.InvariantCulture));
        safe.SetAttributeValue("height", height.ToString(CultureInfo.InvariantCulture));
        return ExaminedFigure.Of(
            FigureFormat.Svg, (int)Math.Ceiling(width), (int)Math.Ceiling(height), Written(safe), drawing._removed, hadPosition: false);
    }

    private static XDocument Load(byte[] bytes)
    {
        var settings = new XmlReaderSettings { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null };
        try
        {
            // What is too deep or too much is met before it is built.
            using (var reader = XmlReader.Create(new MemoryStream(bytes), settings))
            {
                for (var elements = 0; reader.Read();)
                {
                    elements += reader.NodeType == XmlNodeType.Element ? 1 : 0;
                    if (reader.Depth > DeepestElement || elements > MostElements)
                    {
                        throw new FigureException(FigureTrouble.Damaged, "it has more elements than any drawing, or too many within each other");
                    }
                }
            }

            using var again = XmlReader.Create(new MemoryStream(bytes), settings);
            return XDocument.Load(again, LoadOptions.PreserveWhitespace);
        }
        catch (XmlException failure)
        {
            throw new FigureException(
                FigureTrouble.Damaged,
                failure.Message.Contains("DTD", StringComparison.Ordinal)
                    ? "it has a document type, which could bring in anything"
                    : $"line {failure.LineNumber.ToString(CultureInfo.InvariantCulture)} is no XML");
        }
    }

    private static byte[] Written(XElement drawing)
    {
        using MemoryStream stream = new();
        using (var writer = XmlWriter.Create(stream, new XmlWriterSettings { OmitXmlDeclaration = true, Encoding = new System.Text.UTF8Encoding(false), NewLineHandling = NewLineHandling.None }))
        {
            drawing.WriteTo(writer);
        }

        return stream.ToArray();
    }

    /// <summary>The element as it may be; null where it may not.</summary>
    private XElement? Safe(XElement element, bool isReferredTo)
    {
        var name = element.Name.LocalName;
        if (element.Name.Namespace != Svg || !SvgAllowed.Elements.Contains(name))
        {
            if (element.Name.Namespace == Page || (element.Name.Namespace == Svg && !SvgAllowed.Silent.Contains(name)))
            {
                _removed.Add($"`<{Short(name)}>`");
            }

            return null;
        }

        if (name == "style" && !SvgValues.IsSafeSheet(element.Value, _references))
        {
            _removed.Add("a `<style>` that reaches out of the drawing");
            return null;
        }

        isReferredTo |= _references.IsReferredTo(element);
        XElement safe = new(Svg + name);
        foreach (var attribute in element.Attributes().Where(attribute => !attribute.IsNamespaceDeclaration))
        {
            Add(safe, attribute, isReferredTo);
        }

        safe.Add(Children(element, isReferredTo));
        return safe;
    }

    private IEnumerable<XNode> Children(XElement element, bool isReferredTo)
    {
        var holdsText = element.Name.LocalName is "text" or "tspan" or "style";
        foreach (var node in element.Nodes())
        {
            switch (node)
            {
                case XText text when holdsText:
                    yield return new XText(text.Value);
                    break;
                case XElement child when child.Name.Namespace == Svg && SvgAllowed.Opened.Contains(child.Name.LocalName):
                    _removed.Add("a link");
                    foreach (var inner in Children(child, isReferredTo))
                    {
                        yield return inner;
                    }

                    break;
                case XElement child when Safe(child, isReferredTo) is { } safe:
                    yield return safe;
                    break;
            }
        }
    }

    private void Add(XElement safe, XAttribute attribute, bool isReferredTo)
    {
        var name = attribute.Name.LocalName;
        if (name == "href" && (attribute.Name.Namespace == XNamespace.None || attribute.Name.Namespace == Link))
        {
            Refer(safe, attribute.Value.Trim(), isReferredTo);
            return;
        }

        if (attribute.Name.Namespace == XNamespace.Xml && name == "space")
        {
            safe.Add(new XAttribute(XNamespace.Xml + "space", attribute.Value == "preserve" ? "preserve" : "default"));
            return;
        }

        if (attribute.Name.Namespace != XNamespace.None)
        {
            return;
        }

        if (name.StartsWith("on", StringComparison.OrdinalIgnoreCase))
        {
            _removed.Add($"`{Short(name)}`");
            return;
        }

        if (!SvgAllowed.Attributes.Contains(name) || (name == "id" && !_references.IsReferredTo(safe.Name.LocalName, attribute.Value)))
        {
            return;
        }

        var value = name == "style" ? SvgValues.SafeStyle(attribute.Value, Keeps, _removed) : Keeps(attribute.Value) ? attribute.Value : null;
        if (value is null)
        {
            _removed.Add($"`{Short(name)}` with a reference out of the drawing");
        }
        else if (value.Length > 0)
        {
            safe.SetAttributeValue(name, value);
        }

        bool Keeps(string text) => SvgValues.IsSafe(text, id => _references.MayBeUsed(id, isReferredTo));
    }

    private void Refer(XElement safe, string target, bool isReferredTo)
    {
        if (safe.Name.LocalName is not ("use" or "linearGradient" or "radialGradient"))
        {
            return;
        }

        if (!target.StartsWith('#'))
        {
            _removed.Add("a reference out of the drawing");
        }
        else if (_references.MayBeUsed(target[1..], isReferredTo))
        {
            safe.SetAttributeValue("href", target);
        }
        else
        {
            _removed.Add("a copy within a copy");
        }
    }

    private static string Short(string name) => name.Length <= 40 ? name : name[..40] + "…";
}
