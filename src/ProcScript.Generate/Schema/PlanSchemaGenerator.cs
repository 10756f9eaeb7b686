using ProcScript.Analysis.Plans;

namespace ProcScript.Generate.Schema;

/// <summary>The JSON schema of a plan.</summary>
internal sealed class PlanSchemaGenerator : IGenerator
{
    public string Name => "plan-schema";

    public string? OwnedFolder => null;

    public IReadOnlyList<GeneratedFile> Generate(string root) =>
        [new GeneratedFile("src/ProcScript.Cards/plan.schema.json", RecordSchema.Of("The plan of a proven procedure", typeof(Plan), PlanJson.Published))];
}
