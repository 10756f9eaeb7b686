using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using System.Xml;
using System.Xml.Linq;

namespace ProcScript.Analysis.Translations;

/// <summary>
/// Texts and their translations in XLIFF 2.1 (OASIS): a <c>file</c> a source file, a <c>unit</c> a text, named by where it stands. A note
/// carries the hash of the source text, so that a translator's tool that rewrites blanks is found out.
/// </summary>
public sealed class XliffFile
{
    private const string Version = "2.1";
    private const string HashNote = "source-sha256";

    /// <summary>A file is read no further than that.</summary>
    private const int MostCharacters = 50_000_000;

    private static readonly XNamespace Xliff = "urn:oasis:names:tc:xliff:document:2.0";

    /// <summary>The texts, in order.</summary>
    public required ImmutableArray<TranslationUnit> Units { get; init; }

    /// <summary>The language that they are written in.</summary>
    public string SourceLanguage { get; init; } = "";

    /// <summary>The language that they are translated into.</summary>
    public string TargetLanguage { get; init; } = "";

    /// <summary>Why it could not be read; empty where it could.</summary>
    public string Problem { get; init; } = "";

    /// <summary>A file without texts, and why.</summary>
    public static XliffFile None(string problem) => new() { Units = [], Problem = problem };

    /// <summary>Reads a file; what is wrong with it stands in <see cref="Problem"/>.</summary>
    public static XliffFile Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        try
        {
            using var reader = XmlReader.Create(
                new StringReader(text),
                new XmlReaderSettings { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null, MaxCharactersInDocument = MostCharacters });
            return Read(XDocument.Load(reader, LoadOptions.PreserveWhitespace).Root!);
        }
        catch (XmlException wrong)
        {
            return None($"it is no XML: {wrong.Message}");
        }
    }

    /// <summary>Writes texts out.</summary>
    public static string Write(IEnumerable<TranslationUnit> units, string sourceLanguage, string targetLanguage)
    {
        var root = new XElement(
            Xliff + "xliff",
            new XAttribute("version", Version),
            new XAttribute("srcLang", sourceLanguage),
            new XAttribute("trgLang", targetLanguage),
            new XAttribute(XNamespace.Xml + "space", "preserve"),
            units.GroupBy(unit => unit.Path).Select((file, at) => new XElement(
                Xliff + "file",
                new XAttribute("id", $"f{at + 1}"),
                new XAttribute("original", file.Key),
                file.Select(Element))));
        var written = new StringBuilder();
        using (var writer = XmlWriter.Create(written, new XmlWriterSettings { Indent = true, IndentChars = "  ", NewLineChars = "\n", OmitXmlDeclaration = true }))
        {
            root.Save(writer);
        }

        return $"<?xml version=\"1.0\" encoding=\"utf-8\"?>\n{written}\n";
    }

    private static XElement Element(TranslationUnit unit, int at) => new(
        Xliff + "unit",
        new XAttribute("id", $"u{at + 1}"),
        new XAttribute("name", unit.Key),
        new XElement(Xliff + "notes", new XElement(Xliff + "note", new XAttribute("category", HashNote), Hash(unit.Source))),
        new XElement(
            Xliff + "segment",
            new XAttribute("state", unit.Target.Length > 0 ? "translated" : "initial"),
            new XElement(Xliff + "source", unit.Source),
            unit.Target.Length > 0 ? new XElement(Xliff + "target", unit.Target) : null));

    private static XliffFile Read(XElement root)
    {
        if (root.Name != Xliff + "xliff" || root.Attribute("version")?.Value is not ("2.0" or Version))
        {
            return None($"it is no XLIFF {Version}: its root is `{root.Name.LocalName}`");
        }

        var units = ImmutableArray.CreateBuilder<TranslationUnit>();
        foreach (var file in root.Elements(Xliff + "file"))
        {
            foreach (var unit in file.Descendants(Xliff + "unit"))
            {
                if (file.Attribute("original")?.Value is not { } path || unit.Attribute("name")?.Value is not { } key)
                {
                    return None("a file has no `original` or a unit no `name`: these say where a text stands");
                }

                var source = Joined(unit, "source");
                var isAsHashed = unit.Descendants(Xliff + "note").FirstOrDefault(note => note.Attribute("category")?.Value == HashNote) is not { } hash || hash.Value.Trim() == Hash(source);
                units.Add(new TranslationUnit(path, key, isAsHashed ? source : "", Joined(unit, "target")));
            }
        }

        return new XliffFile
        {
            Units = units.ToImmutable(),
            SourceLanguage = root.Attribute("srcLang")?.Value ?? "",
            TargetLanguage = root.Attribute("trgLang")?.Value ?? "",
        };
    }

    /// <summary>The text of all segments of a unit: a translator's tool may have split it into sentences.</summary>
    private static string Joined(XElement unit, string part) =>
        string.Concat(unit.Elements().Where(element => element.Name == Xliff + "segment" || element.Name == Xliff + "ignorable").Select(segment => segment.Element(Xliff + part)?.Value ?? ""));

    private static string Hash(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
}
