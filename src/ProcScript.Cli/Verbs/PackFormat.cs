using ProcScript.Analysis.Crews;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Settings;
using ProcScript.Cards;

namespace ProcScript.Cli.Verbs;

/// <summary>A form in which a work pack is written.</summary>
/// <param name="Name">What <c>--format</c> calls it.</param>
/// <param name="FileName">The file it is written to.</param>
/// <param name="Write">Writes it.</param>
internal sealed record PackFormat(string Name, string FileName, Func<Plan, PackTemplates, PathSettings, CrewPlan?, PackText> Write)
{
    /// <summary>The file with pictures beside it.</summary>
    public const string MarkdownFile = "cards.md";

    /// <summary>All forms.</summary>
    public static IReadOnlyList<PackFormat> All { get; } =
    [
        new(
            "html",
            "cards.html",
            (plan, templates, settings, crew) =>
                WorkPack.Html(plan, templates, settings.Get(SettingsTable.Layout), settings.Get(SettingsTable.Labels), crew)),
        new("md", MarkdownFile, (plan, templates, settings, crew) => WorkPack.Markdown(plan, templates, settings.Get(SettingsTable.Labels), crew)),
        new("json", "plan.json", (plan, _, _, _) => new PackText(WorkPack.Json(plan), [])),
    ];
}
