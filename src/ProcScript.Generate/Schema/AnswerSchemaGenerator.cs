using ProcScript.Analysis.Reaching;

namespace ProcScript.Generate.Schema;

/// <summary>The JSON schemas of the answers to questions about a machine.</summary>
internal sealed class AnswerSchemaGenerator : IGenerator
{
    public string Name => "answer-schemas";

    public string? OwnedFolder => null;

    public IReadOnlyList<GeneratedFile> Generate(string root) =>
    [
        new GeneratedFile("src/ProcScript.Cards/reach.schema.json", RecordSchema.Of("How something on a machine is reached", typeof(ReachReport), ReachJson.Published)),
        new GeneratedFile("src/ProcScript.Cards/back.schema.json", RecordSchema.Of("How a machine goes back together from the middle of a job", typeof(BackReport), ReachJson.Published)),
        new GeneratedFile("src/ProcScript.Cards/together.schema.json", RecordSchema.Of("Several jobs in one visit", typeof(TogetherReport), ReachJson.Published)),
        new GeneratedFile("src/ProcScript.Cards/why.schema.json", RecordSchema.Of("What an item has to do with the rest of its machine", typeof(WhyReport), ReachJson.Published)),
    ];
}
