using System.Collections.Immutable;
using System.Globalization;
using ProcScript.Analysis.Plans;

namespace ProcScript.Cards.Figures;

/// <summary>The pictures of a pack: as data for a page, and as files beside a text.</summary>
internal sealed class PackPictures
{
    private const string Folder = "figures/";

    private readonly Dictionary<string, PackPicture> _byFile = new(StringComparer.Ordinal);

    private PackPictures()
    {
    }

    /// <summary>The pictures of a plan that could be taken, each file once.</summary>
    public static PackPictures Of(Plan plan)
    {
        PackPictures pictures = new();
        HashSet<string> names = new(StringComparer.OrdinalIgnoreCase);
        foreach (var figure in plan.Strip.Append(plan.Work).Concat(plan.Refit).SelectMany(stage => stage.Steps).SelectMany(step => step.Figures))
        {
            if (!figure.Content.IsEmpty && !pictures._byFile.ContainsKey(figure.File))
            {
                pictures._byFile.Add(figure.File, new PackPicture(Folder + Free(figure.File, names), figure.Type, figure.Content));
            }
        }

        return pictures;
    }

    /// <summary>All of them, in the order of the steps.</summary>
    public IEnumerable<PackPicture> All => _byFile.Values;

    /// <summary>The picture as an address that holds it; empty where there is none.</summary>
    public string DataOf(string file) =>
        _byFile.TryGetValue(file, out var picture) ? $"data:{picture.Type};base64,{Convert.ToBase64String(picture.Content.AsSpan())}" : "";

    /// <summary>The file beside the text that holds it; empty where there is none.</summary>
    public string NameOf(string file) => _byFile.TryGetValue(file, out var picture) ? picture.Name : "";

    /// <summary>The last part of a path in letters that any system and any reader of Markdown takes; no name twice.</summary>
    private static string Free(string file, HashSet<string> names)
    {
        var name = file[(file.LastIndexOf('/') + 1)..];
        var dot = name.LastIndexOf('.');
        var (stem, ending) = (Plain(name[..dot]), Plain(name[(dot + 1)..].ToLowerInvariant()));
        var free = $"{stem}.{ending}";
        for (var number = 2; !names.Add(free); number++)
        {
            free = string.Create(CultureInfo.InvariantCulture, $"{stem}-{number}.{ending}");
        }

        return free;
    }

    private static string Plain(string text) =>
        string.Concat(text.Select(letter => char.IsAsciiLetterOrDigit(letter) || letter is '-' or '_' ? letter : '-')) is { Length: > 0 } plain ? plain : "picture";
}

/// <summary>A picture of a pack.</summary>
/// <param name="Name">The file beside the text, as a relative path.</param>
/// <param name="Type">Its media type.</param>
/// <param name="Content">The picture.</param>
public sealed record PackPicture(string Name, string Type, ImmutableArray<byte> Content);
