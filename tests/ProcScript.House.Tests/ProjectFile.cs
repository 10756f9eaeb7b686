using System.Xml.Linq;

namespace ProcScript.House.Tests;

/// <summary>What a project file says about whom it builds on.</summary>
/// <param name="Path">Where it stands, from the root.</param>
internal sealed record ProjectFile(string Path)
{
    private readonly XDocument _document = XDocument.Parse(Repository.Read(Path));

    public string Name => System.IO.Path.GetFileNameWithoutExtension(Path);

    public IEnumerable<string> References => Includes("ProjectReference").Select(System.IO.Path.GetFileNameWithoutExtension).OfType<string>();

    public IEnumerable<string> Packages => Includes("PackageReference");

    public static IReadOnlyList<ProjectFile> In(string folder) =>
        [.. Repository.Files(folder, "*.csproj").Select(path => new ProjectFile(path))];

    public string? Property(string name) => _document.Descendants(name).SingleOrDefault()?.Value;

    private IEnumerable<string> Includes(string item) =>
        _document.Descendants(item).Select(element => (string?)element.Attribute("Include")).OfType<string>();
}
