using System.Collections.Immutable;
using System.Text;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Settings;
using ProcScript.Cards.Labels;

namespace ProcScript.Cards;

/// <summary>The papers of a job, as they are frozen when it is opened or when its refit is derived anew.</summary>
public static class JobPack
{
    /// <summary>The plan's file.</summary>
    public const string PlanFile = "plan.json";

    /// <summary>The cards' file.</summary>
    public const string CardsFile = "cards.html";

    /// <summary>All files, by their paths in the job.</summary>
    /// <param name="folder">The folder that they are kept in.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="templates">What cards are made from.</param>
    /// <param name="settings">What the shop has chosen.</param>
    /// <param name="faults">What is wrong with the templates.</param>
    public static IReadOnlyDictionary<string, byte[]> Files(string folder, Plan plan, PackTemplates templates, PathSettings settings, out ImmutableArray<TemplateFault> faults)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(settings);
        var (layout, labels) = (settings.Get(SettingsTable.Layout), settings.Get(SettingsTable.Labels));
        var texts = new Dictionary<string, PackText>(StringComparer.Ordinal)
        {
            [CardsFile] = WorkPack.Html(plan, templates, layout, labels),
            ["cards.md"] = WorkPack.Markdown(plan, templates, labels),
            [PlanFile] = new PackText(WorkPack.Json(plan), []),
        };
        if (!plan.Bags.IsEmpty && LabelSheet.Of(labels) is { } sheet)
        {
            texts["labels.html"] = WorkPack.Labels(plan, templates, sheet);
        }

        faults = [.. texts.Values.SelectMany(text => text.Faults)];
        var files = texts.ToDictionary(text => $"{folder}/{text.Key}", text => Encoding.UTF8.GetBytes(text.Value.Text), StringComparer.Ordinal);
        foreach (var picture in WorkPack.Pictures(plan))
        {
            files[$"{folder}/{picture.Name}"] = [.. picture.Content];
        }

        return files;
    }
}
