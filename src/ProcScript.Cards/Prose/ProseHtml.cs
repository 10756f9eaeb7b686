using System.Globalization;
using Markdig.Renderers;

namespace ProcScript.Cards.Prose;

/// <summary>An author's prose as HTML.</summary>
public static class ProseHtml
{
    /// <summary>Renders prose as block elements.</summary>
    public static string Render(string prose)
    {
        using StringWriter html = new(CultureInfo.InvariantCulture) { NewLine = "\n" };
        HtmlRenderer renderer = new(html);
        ProseDocument.Pipeline.Setup(renderer);
        renderer.Render(ProseDocument.Parse(prose));
        return html.ToString().TrimEnd('\n');
    }
}
