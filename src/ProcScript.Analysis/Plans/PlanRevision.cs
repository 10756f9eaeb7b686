using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace ProcScript.Analysis.Plans;

/// <summary>
/// The short name of what a plan says: paper with another revision is void. It is a pure function of the plan as it is published, but for the
/// revision itself, the name of its language and what no paper prints: the places of steps in the sources, and what only another program needs to replay the plan. So a comment,
/// the layout of a text or another procedure leaves it as it is, and so does a new sort of thing that plans can say and this one does not;
/// whatever a pack says in another way changes it. Templates are a shop's own look and are not in it.
/// </summary>
internal static class PlanRevision
{
    private const int Digits = 10;

    private static readonly PlanSource Nowhere = new("", 0, 0);

    /// <summary>The first digits of SHA-256 over <see cref="Content"/>.</summary>
    public static string Of(Plan plan) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(Content(plan))))[..Digits];

    /// <summary>All that a plan says on paper, but for its revision.</summary>
    public static string Content(Plan plan)
    {
        var content = JsonSerializer.SerializeToNode(
            plan with
            {
                Revision = "",
                Language = "",
                TextsLanguage = "",
                Licensed = [],
                Procedure = "",
                Parameters = [],
                GoalActions = [],
                Items = [],
                Rules = [],
                Discards = [.. plan.Discards.Select(discard => new PlanDiscard(discard.Title, discard.Because))],
                Strip = [.. plan.Strip.Select(OnPaper)],
                Work = OnPaper(plan.Work),
                Refit = [.. plan.Refit.Select(OnPaper)],
            },
            PlanJson.Published.Plan)!;
        LeaveOutBlanks(content);
        return content.ToJsonString();
    }

    private static PlanStage OnPaper(PlanStage stage) => stage with
    {
        Steps = [.. stage.Steps.Select(step => step with { Source = Nowhere, Position = "", Needs = [], Open = [], Test = 0 })],
    };

    /// <summary>Takes out every member that says nothing.</summary>
    private static void LeaveOutBlanks(JsonNode node)
    {
        switch (node)
        {
            case JsonArray list:
                foreach (var one in list.OfType<JsonNode>())
                {
                    LeaveOutBlanks(one);
                }

                break;
            case JsonObject members:
                foreach (var (name, value) in members.ToList())
                {
                    if (IsBlank(value))
                    {
                        members.Remove(name);
                    }
                    else
                    {
                        LeaveOutBlanks(value!);
                    }
                }

                break;
        }
    }

    private static bool IsBlank(JsonNode? value) => value switch
    {
        null => true,
        JsonArray list => list.Count == 0,
        JsonObject => false,
        _ => value.GetValueKind() switch
        {
            JsonValueKind.String => value.GetValue<string>().Length == 0,
            JsonValueKind.False => true,
            JsonValueKind.Number => value.ToJsonString() == "0",
            _ => false,
        },
    };
}
