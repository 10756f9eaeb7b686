using System.Text.Json;
using ProcScript.Analysis;
using ProcScript.Syntax.Findings;

namespace ProcScript.Cli.Reports.Sarif;

/// <summary>The rules that a run has results of, with their pages.</summary>
internal sealed class SarifRules
{
    private readonly List<Rule> _rules;
    private readonly Dictionary<string, int> _indices = new(StringComparer.Ordinal);

    /// <summary>Takes the codes of the results.</summary>
    public SarifRules(IEnumerable<string> codes)
    {
        var wanted = codes.ToHashSet(StringComparer.Ordinal);
        _rules = [.. RuleCatalog.All.Where(rule => wanted.Contains(rule.Info.Code))];
        for (var i = 0; i < _rules.Count; i++)
        {
            _indices.Add(_rules[i].Info.Code, i);
        }
    }

    /// <summary>Where a rule stands in the list.</summary>
    public int IndexOf(string code) => _indices[code];

    /// <summary>Writes the list.</summary>
    public void Write(Utf8JsonWriter json)
    {
        json.WriteStartArray("rules");
        foreach (var rule in _rules)
        {
            Write(json, rule);
        }

        json.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter json, Rule rule)
    {
        var (info, page) = (rule.Info, rule.Page);
        json.WriteStartObject();
        json.WriteString("id", info.Code);
        json.WriteString("name", info.Name);
        SarifLog.WriteText(json, "shortDescription", info.Title + ".");
        SarifLog.WriteText(json, "fullDescription", page.What);
        json.WriteStartObject("help");
        json.WriteString("text", $"{page.What}\n\n{page.Why}\n\nWrong:\n\n{page.Wrong}\n\nRight:\n\n{page.Right}".ReplaceLineEndings("\n"));
        json.WriteString(
            "markdown",
            $"{page.What}\n\n{page.Why}\n\n**Wrong**\n\n```\n{page.Wrong}\n```\n\n**Right**\n\n```\n{page.Right}\n```".ReplaceLineEndings("\n"));
        json.WriteEndObject();
        json.WriteStartObject("defaultConfiguration");
        json.WriteString("level", SarifResults.LevelOf(info.DefaultSeverity));
        json.WriteEndObject();
        json.WriteEndObject();
    }
}
