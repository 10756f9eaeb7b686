using ProcScript.Analysis.Comparing;

namespace ProcScript.Generate.Schema;

/// <summary>The JSON schema of what a comparison of two states of a library writes.</summary>
internal sealed class ChangeSchemaGenerator : IGenerator
{
    public string Name => "change-schema";

    public string? OwnedFolder => null;

    public IReadOnlyList<GeneratedFile> Generate(string root) =>
        [new GeneratedFile("src/ProcScript.Cards/change.schema.json", RecordSchema.Of("What the packs of a library say otherwise", typeof(LibraryChange), ChangeJson.Published))];
}
