using ProcScript.Analysis.Baselines;
using ProcScript.Analysis.Reports.Documents;

namespace ProcScript.Generate.Schema;

/// <summary>The JSON schemas of what a check writes, and of what it reads and writes as a baseline.</summary>
internal sealed class ReportSchemaGenerator : IGenerator
{
    private const string Folder = "src/ProcScript.Analysis";

    public string Name => "report-schemas";

    public string? OwnedFolder => null;

    public IReadOnlyList<GeneratedFile> Generate(string root) =>
    [
        new GeneratedFile($"{Folder}/report.schema.json", RecordSchema.Of("What a check of a library comes to", typeof(ReportDocument), ReportJson.Published)),
        new GeneratedFile($"{Folder}/suppressions.schema.json", RecordSchema.Of("The comments that allow findings", typeof(SuppressionsDocument), ReportJson.Published)),
        new GeneratedFile($"{Folder}/audit.schema.json", RecordSchema.Of("Mistakes made on purpose that nothing notices", typeof(AuditDocument), ReportJson.Published)),
        new GeneratedFile($"{Folder}/baseline.schema.json", RecordSchema.Of("The findings that a library had", typeof(BaselineDocument), BaselineJson.Published)),
    ];
}
