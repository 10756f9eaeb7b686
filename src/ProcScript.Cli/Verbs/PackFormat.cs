using ProcScript.Analysis.Plans;
using ProcScript.Cards;

namespace ProcScript.Cli.Verbs;

/// <summary>A form in which a work pack is written.</summary>
/// <param name="Name">What <c>--format</c> calls it.</param>
/// <param name="FileName">The file it is written to.</param>
/// <param name="Write">Writes it.</param>
internal sealed record PackFormat(string Name, string FileName, Func<Plan, PackTemplates, PackText> Write)
{
    /// <summary>The file with pictures beside it.</summary>
    public const string MarkdownFile = "cards.md";

    /// <summary>All forms.</summary>
    public static IReadOnlyList<PackFormat> All { get; } =
    [
        new("html", "cards.html", WorkPack.Html),
        new("md", MarkdownFile, WorkPack.Markdown),
        new("json", "plan.json", (plan, _) => new PackText(WorkPack.Json(plan), [])),
    ];
}
