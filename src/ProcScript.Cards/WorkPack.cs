using System.Text.Json;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Settings;
using ProcScript.Cards.Maps;
using ProcScript.Cards.Templating;

namespace ProcScript.Cards;

/// <summary>Writes a plan as the papers that a technician works from. Same plan and templates, same characters out.</summary>
public static class WorkPack
{
    /// <summary>The pack as one HTML file that asks for nothing outside itself and can be read without its script.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="templates">What it is made from.</param>
    /// <param name="layout">How its cards are printed.</param>
    public static PackText Html(Plan plan, PackTemplates templates, CardLayout layout = CardLayout.Flow) => PackRun.Html(plan, templates, layout);

    /// <summary>The same pack as Markdown that reads well as plain text.</summary>
    public static PackText Markdown(Plan plan, PackTemplates templates) => PackRun.Markdown(plan, templates);

    /// <summary>The map as a drawing of its own, in SVG; empty where there is nothing to draw or too much.</summary>
    public static string Map(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return MapFile.Svg(plan.Map);
    }

    /// <summary>The plan itself, in the form that <c>plan.schema.json</c> describes.</summary>
    public static string Json(Plan plan) => JsonSerializer.Serialize(plan, PlanJson.Published.Plan) + "\n";
}
