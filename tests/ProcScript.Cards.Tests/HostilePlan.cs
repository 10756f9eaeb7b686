using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;
using ProcScript.Analysis.Plans;
using ProcScript.Cards.Tests.Samples;

namespace ProcScript.Cards.Tests;

/// <summary>The sample plan with a hostile text in every place that a text can stand.</summary>
internal static class HostilePlan
{
    private static readonly string[] Pieces =
    [
        "<script>alert(1)</script>", "</style><script>alert(2)</script>", "\"><img src=x onerror=alert(3)>", "' onfocus='alert(4)", "javascript:alert(5)",
        "<!-- ", "-->", "]]>", "&lt;b&gt;", "&amp;", "&#60;", "{{ plan.job }}", "{{", "}}", "`code`", "**bold**", "_it_", "[x](http://e.example/)",
        "![x](http://e.example/x.png)", "<http://e.example/>", "https://e.example/a", "www.e.example", "a@e.example", "# head", "- item", "1. item", "1) item",
        "> quote", "| a | b |", "~~gone~~", "***", "---", "===", "```", "    indented", "$x$", "^up^", "==mark==", "\\", "\\*", "\\3c ", "\"", "'", "/*", "*/",
        "\u202Eabc", "é", "日本", "😀", "\u00A0", " ", "  ", "a", "M8 × 25",
    ];

    // What the program says by a word of its own, which stands for words in the language of the pack: no author writes it.
    private static readonly string[] Own = ["language", "textsLanguage", "word", "side"];

    /// <summary>Texts put together from pieces that mean something to HTML, CSS, Markdown or the template language.</summary>
    public static Gen<string> Text { get; } = Gen.OneOf(Pieces).Array[1, 5].Select(string.Concat);

    /// <summary>A plan whose every text is one of <see cref="Text"/>.</summary>
    public static Gen<Plan> Generate { get; } = Text.Array[1, 40].Select(texts =>
    {
        var next = 0;
        return Fill(() => texts[next++ % texts.Length]);
    });

    /// <summary>The sample with every text replaced.</summary>
    public static Plan Fill(Func<string> text)
    {
        var document = JsonSerializer.SerializeToNode(SamplePlan.Evaporator, PlanJson.Published.Plan)!;
        Replace(document, text);
        return document.Deserialize(PlanJson.Published.Plan)!;
    }

    private static void Replace(JsonNode node, Func<string> text)
    {
        if (node is JsonObject parent)
        {
            foreach (var (name, value) in parent.Where(field => !Own.Contains(field.Key)).ToList())
            {
                if (value is JsonValue leaf && leaf.GetValueKind() == JsonValueKind.String)
                {
                    parent[name] = text();
                }
                else if (value is not null)
                {
                    Replace(value, text);
                }
            }
        }
        else if (node is JsonArray items)
        {
            for (var i = 0; i < items.Count; i++)
            {
                if (items[i] is JsonValue leaf && leaf.GetValueKind() == JsonValueKind.String)
                {
                    items[i] = text();
                }
                else if (items[i] is { } item)
                {
                    Replace(item, text);
                }
            }
        }
    }
}
