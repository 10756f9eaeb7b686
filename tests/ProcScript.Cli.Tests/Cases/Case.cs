namespace ProcScript.Cli.Tests.Cases;

/// <summary>A folder with sources, and beside them what the program says of them.</summary>
/// <param name="Name">Its path below <c>tests/cases</c>, with forward slashes.</param>
internal sealed record Case(string Name)
{
    private const string Rules = "rules";

    public string Folder => Path.Combine(Checkout.Cases, Name);

    /// <summary>The sources, relative to the folder, in order.</summary>
    public IReadOnlyList<string> Sources => FilesBelow(Folder).Where(IsSource).ToList();

    /// <summary>The sources, their translations, and the settings that they are checked by.</summary>
    public IReadOnlyList<string> Files => FilesBelow(Folder).Where(path => IsSource(path) || IsSettings(path) || IsTranslation(path)).ToList();

    /// <summary>
    /// Every case: <c>group/case</c>, and of a rule <c>rules/CODE/fires</c>, <c>quiet</c> and <c>fixed</c>. A case may have folders.
    /// </summary>
    public static IReadOnlyList<Case> All { get; } = [.. Find().OrderBy(found => found.Name, StringComparer.Ordinal)];

    public static IEnumerable<Case> OfRule(string code, string kind) =>
        All.Where(found => found.Name == $"{Rules}/{code}/{kind}");

    /// <summary>Every file below a folder, relative, with forward slashes, in order.</summary>
    public static IEnumerable<string> FilesBelow(string folder) =>
        Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Select(path => Path.GetRelativePath(folder, path).Replace('\\', '/'))
            .Order(StringComparer.Ordinal);

    public static bool IsSource(string path) => path.EndsWith(".proc", StringComparison.Ordinal);

    public static bool IsSettings(string path) => path.EndsWith(".json", StringComparison.Ordinal) && Path.GetFileName(path) != "plan.json";

    public static bool IsTranslation(string path) => path.EndsWith(".xlf", StringComparison.Ordinal);

    /// <summary>Whether a file is a plain list that a source of its case is drafted from.</summary>
    public static bool IsList(string path) => Path.GetFileName(path) is "notes.txt" or "parts.csv";

    /// <summary>Whether a file is there to be shown by a source, whatever is in it.</summary>
    public static bool IsPicture(string path) => Path.GetExtension(path).ToUpperInvariant() is ".SVG" or ".PNG" or ".JPG" or ".WEBP" or ".GIF";

    private static IEnumerable<Case> Find() =>
        from path in Directory.Exists(Checkout.Cases) ? FilesBelow(Checkout.Cases) : []
        let parts = path.Split('/')
        where parts.Length > 2
        let depth = parts[0] == Rules ? 3 : 2
        where parts.Length > depth
        group path by string.Join('/', parts[..depth]) into files
        select new Case(files.Key);
}
