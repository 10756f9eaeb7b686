using System.Text.Json;
using ProcScript.Analysis.Crews;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Settings;
using ProcScript.Cards.Figures;
using ProcScript.Cards.Labels;
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
    /// <param name="labels">What its bag labels are printed on: on sheets of labels they are a document of their own.</param>
    /// <param name="crew">Who does what; null for a pack that leaves it open.</param>
    public static PackText Html(
        Plan plan, PackTemplates templates, CardLayout layout = CardLayout.Flow, LabelStock labels = LabelStock.Plain, CrewPlan? crew = null) =>
        PackRun.Html(plan, templates, layout, LabelSheet.Of(labels), crew);

    /// <summary>The same pack as Markdown that reads well as plain text.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="templates">What it is made from.</param>
    /// <param name="labels">What its bag labels are printed on.</param>
    /// <param name="crew">Who does what; null for a pack that leaves it open.</param>
    public static PackText Markdown(Plan plan, PackTemplates templates, LabelStock labels = LabelStock.Plain, CrewPlan? crew = null) =>
        PackRun.Markdown(plan, templates, LabelSheet.Of(labels), crew);

    /// <summary>The bag labels for a sheet of labels, as one HTML file: every page is a sheet.</summary>
    public static PackText Labels(Plan plan, PackTemplates templates, LabelSheet sheet) => PackRun.Labels(plan, templates, sheet);

    /// <summary>The map as a drawing of its own, in SVG; empty where there is nothing to draw or too much.</summary>
    public static string Map(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return MapFile.Svg(plan.Map, PackLanguages.BookOf(plan));
    }

    /// <summary>The pictures that the Markdown pack shows: the files that belong beside it.</summary>
    public static IEnumerable<PackPicture> Pictures(Plan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return PackPictures.Of(plan).All;
    }

    /// <summary>The plan itself, in the form that <c>plan.schema.json</c> describes.</summary>
    public static string Json(Plan plan) => JsonSerializer.Serialize(plan, PlanJson.Published.Plan) + "\n";

    /// <summary>Who does what, in the form that <c>crew.schema.json</c> describes.</summary>
    public static string CrewText(CrewPlan crew) => JsonSerializer.Serialize(new CrewDocument("1", [crew]), CrewJson.Published.CrewDocument) + "\n";
}
