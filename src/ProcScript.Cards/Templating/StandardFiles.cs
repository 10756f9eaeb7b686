using System.Collections.Frozen;
using System.Collections.Immutable;
using System.Text;

namespace ProcScript.Cards.Templating;

/// <summary>The standard templates, which are built into this assembly.</summary>
internal static class StandardFiles
{
    private const string Prefix = "Templates/";

    /// <summary>Their names, in order.</summary>
    public static readonly ImmutableArray<string> Names =
    [
        .. typeof(StandardFiles).Assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith(Prefix, StringComparison.Ordinal))
            .Select(name => name[Prefix.Length..])
            .Order(StringComparer.Ordinal),
    ];

    /// <summary>Their texts by name.</summary>
    public static FrozenDictionary<string, string> Read() => Names.ToFrozenDictionary(name => name, Read, StringComparer.Ordinal);

    private static string Read(string name)
    {
        using var stream = typeof(StandardFiles).Assembly.GetManifestResourceStream(Prefix + name)
            ?? throw new InvalidOperationException($"The template {name} is not built in.");
        using StreamReader reader = new(stream, Encoding.UTF8);
        // A checkout with other line ends must not change the pack.
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
