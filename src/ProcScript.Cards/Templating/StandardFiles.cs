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

    /// <summary>A text as if it had been saved without a byte order mark and with plain line ends: neither may change a pack.</summary>
    public static string Normalized(string text) => text.TrimStart('\ufeff').ReplaceLineEndings("\n");

    private static string Read(string name)
    {
        using var stream = typeof(StandardFiles).Assembly.GetManifestResourceStream(Prefix + name)
            ?? throw new InvalidOperationException($"The template {name} is not built in.");
        using StreamReader reader = new(stream, Encoding.UTF8);
        return Normalized(reader.ReadToEnd());
    }
}
