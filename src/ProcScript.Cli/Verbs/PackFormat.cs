using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Settings;
using ProcScript.Cards;

namespace ProcScript.Cli.Verbs;

/// <summary>A form in which a work pack is written.</summary>
/// <param name="Name">What <c>--format</c> calls it.</param>
/// <param name="FileName">The file it is written to.</param>
/// <param name="Write">Writes it.</param>
internal sealed record PackFormat(string Name, string FileName, Func<Plan, PackTemplates, CardLayout, PackText> Write)
{
    /// <summary>All forms.</summary>
    public static IReadOnlyList<PackFormat> All { get; } =
    [
        new("html", "cards.html", WorkPack.Html),
        new("md", "cards.md", (plan, templates, _) => WorkPack.Markdown(plan, templates)),
        new("json", "plan.json", (plan, _, _) => new PackText(WorkPack.Json(plan), [])),
    ];
}
