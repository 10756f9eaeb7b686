using ProcScript.Analysis.Machines.Documents;

namespace ProcScript.Generate.Schema;

/// <summary>The JSON schema of machines as data.</summary>
internal sealed class ModelSchemaGenerator : IGenerator
{
    public string Name => "model-schema";

    public string? OwnedFolder => null;

    public IReadOnlyList<GeneratedFile> Generate(string root) =>
        [new GeneratedFile("src/ProcScript.Analysis/model.schema.json", RecordSchema.Of("The machines of a library", typeof(ModelDocument), ModelJson.Published))];
}
