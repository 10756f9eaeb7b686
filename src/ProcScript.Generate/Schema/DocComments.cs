using System.Reflection;
using System.Text.Json.Serialization.Metadata;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace ProcScript.Generate.Schema;

/// <summary>The doc comments of an assembly, from the XML file that the compiler writes beside it.</summary>
internal sealed partial class DocComments
{
    private readonly Dictionary<string, XElement> _members;

    private DocComments(XDocument document) => _members = document.Descendants("member")
        .Where(member => member.Attribute("name") is not null)
        .ToDictionary(member => member.Attribute("name")!.Value, StringComparer.Ordinal);

    /// <summary>Reads the comments of an assembly.</summary>
    public static DocComments Of(Assembly assembly)
    {
        var path = Path.Combine(AppContext.BaseDirectory, $"{assembly.GetName().Name}.xml");
        return File.Exists(path) ? new DocComments(XDocument.Load(path)) : throw new GenerationException($"{path} is missing: build the project first.");
    }

    /// <summary>What a type is.</summary>
    public string OfType(Type type) => Text(Member($"T:{type.FullName}").Element("summary"), type.Name);

    /// <summary>What a property is; that of a positional record stands with the record's parameters.</summary>
    public string OfProperty(Type type, JsonPropertyInfo property)
    {
        var name = (property.AttributeProvider as MemberInfo)?.Name ?? throw new GenerationException($"{type.Name}.{property.Name} has no member.");
        var own = _members.GetValueOrDefault($"P:{type.FullName}.{name}")?.Element("summary");
        return Text(own ?? Member($"T:{type.FullName}").Elements("param").FirstOrDefault(param => param.Attribute("name")?.Value == name), $"{type.Name}.{name}");
    }

    private XElement Member(string name) => _members.GetValueOrDefault(name) ?? throw new GenerationException($"{name} has no doc comment.");

    private static string Text(XElement? comment, string of)
    {
        if (comment is null)
        {
            throw new GenerationException($"{of} has no doc comment.");
        }

        var words = comment.Nodes().Select(node => node switch
        {
            XElement { Name.LocalName: "paramref" } reference => reference.Attribute("name")!.Value,
            XElement { Name.LocalName: "see" } reference => reference.Attribute("cref")!.Value.Split('.')[^1],
            XElement element => element.Value,
            XText text => text.Value,
            _ => "",
        });
        return Blanks().Replace(string.Concat(words), " ").Trim();
    }

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blanks();
}
