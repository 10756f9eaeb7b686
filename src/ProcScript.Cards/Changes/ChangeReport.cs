using System.Text;
using System.Text.Json;
using ProcScript.Analysis.Comparing;
using ProcScript.Cards.Escaping;

namespace ProcScript.Cards.Changes;

/// <summary>Writes what has changed in the packs of a library. Same change, same characters out.</summary>
public static class ChangeReport
{
    /// <summary>As text for a terminal.</summary>
    public static string Text(LibraryChange change)
    {
        StringBuilder text = new();
        foreach (var line in ChangeWords.Of(change))
        {
            text.Append(' ', line.Depth * 2).Append(line.Mark.Length > 0 ? line.Mark + " " : "").Append(line.Text).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>As Markdown for a comment in a review.</summary>
    public static string Markdown(LibraryChange change)
    {
        StringBuilder text = new();
        var depth = -1;
        foreach (var line in ChangeWords.Of(change))
        {
            // A list needs a blank line before what follows it, and what leads it in needs one after.
            text.Append(depth >= 0 && (line.Depth < 2 || depth < 2) ? "\n" : "");
            var words = MarkdownText.EscapeWithin(line.Text);
            text.Append(line.Depth switch
            {
                0 => $"### {words}\n",
                1 => $"**{words}**\n",
                2 => $"- {Word(line.Mark)}{words}\n",
                _ => $"  - {words}\n",
            });
            depth = line.Depth;
        }

        return text.ToString();
    }

    /// <summary>As JSON, in the form that <c>change.schema.json</c> describes.</summary>
    public static string Json(LibraryChange change) => JsonSerializer.Serialize(change, ChangeJson.Published.LibraryChange) + "\n";

    private static string Word(string mark) => mark switch
    {
        "+" => "added: ",
        "-" => "dropped: ",
        "~" => "changed: ",
        ">" => "moved: ",
        "!" => "**look:** ",
        _ => "",
    };
}
