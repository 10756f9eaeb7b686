using System.Text;
using System.Text.Json;
using ProcScript.Analysis.Messages;

namespace ProcScript.Cards.Templating;

/// <summary>The messages that the script of a pack says, as JSON; it fills in their places itself.</summary>
internal static class ScriptWords
{
    private const string Prefix = "js.";

    /// <summary>The messages by their keys.</summary>
    public static string Of(Wordbook book)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter writer = new(stream))
        {
            writer.WriteStartObject();
            foreach (var key in book.Keys.Where(key => key.StartsWith(Prefix, StringComparison.Ordinal)))
            {
                writer.WriteString(key[Prefix.Length..], book.Written(key));
            }

            writer.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }
}
