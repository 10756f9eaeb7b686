using ProcScript.Analysis.Crews;

namespace ProcScript.Generate.Schema;

/// <summary>The JSON schema of who does what when.</summary>
internal sealed class CrewSchemaGenerator : IGenerator
{
    public string Name => "crew-schema";

    public string? OwnedFolder => null;

    public IReadOnlyList<GeneratedFile> Generate(string root) =>
        [new GeneratedFile("src/ProcScript.Analysis/crew.schema.json", RecordSchema.Of("Who does what when", typeof(CrewDocument), CrewJson.Published))];
}
