using System.Text.Json;
using System.Text.Json.Nodes;
using ProcScript.Analysis.Messages;
using ProcScript.Model.Texts;

namespace ProcScript.Analysis.Plans;

/// <summary>Puts the translations of the authors' texts into a plan that was made from a library in another language.</summary>
internal static class PlanTexts
{
    /// <summary>The plan with every text of an author in the language of the plan, or marked as an original.</summary>
    public static Plan Told(Plan plan, LibraryTexts texts, PackLanguage original)
    {
        var document = JsonSerializer.SerializeToNode(plan, PlanJson.Published.Plan)!;
        Tell(document, texts);
        return WithPictures(document.Deserialize(PlanJson.Published.Plan)! with { TextsLanguage = original.Tag() }, plan);
    }

    /// <summary>The plan with the pictures of another one, which data that are written down do without.</summary>
    private static Plan WithPictures(Plan told, Plan pictured)
    {
        return told with
        {
            Strip = [.. told.Strip.Zip(pictured.Strip, Stage)],
            Work = Stage(told.Work, pictured.Work),
            Refit = [.. told.Refit.Zip(pictured.Refit, Stage)],
        };

        static PlanStage Stage(PlanStage stage, PlanStage from) => stage with { Steps = [.. stage.Steps.Zip(from.Steps, Step)] };

        static PlanStep Step(PlanStep step, PlanStep from) => step.Figures.IsEmpty
            ? step
            : step with { Figures = [.. step.Figures.Zip(from.Figures, (figure, one) => figure with { Content = one.Content })] };
    }

    private static void Tell(JsonNode node, LibraryTexts texts)
    {
        switch (node)
        {
            case JsonArray list:
                for (var at = 0; at < list.Count; at++)
                {
                    if (Told(list[at], texts) is { } told)
                    {
                        list[at] = told;
                    }
                }

                break;
            case JsonObject members:
                foreach (var (name, value) in members.ToList())
                {
                    if (Told(value, texts) is { } told)
                    {
                        members[name] = told;
                    }
                }

                break;
        }
    }

    /// <summary>The text in place of a text with marks; null for all else.</summary>
    private static JsonValue? Told(JsonNode? node, LibraryTexts texts)
    {
        if (node is JsonValue value && value.TryGetValue<string>(out var text))
        {
            return texts.Told(text) is var told && told != text ? JsonValue.Create(told) : null;
        }

        if (node is not null)
        {
            Tell(node, texts);
        }

        return null;
    }
}
