using ProcScript.Jobs.Journals;
using ProcScript.Jobs.Learning;
using ProcScript.Jobs.Standing;

namespace ProcScript.Generate.Schema;

/// <summary>The JSON schemas of job records: a line of a journal, how a job stands, and what jobs teach.</summary>
internal sealed class JobSchemaGenerator : IGenerator
{
    public string Name => "job-schemas";

    public string? OwnedFolder => null;

    public IReadOnlyList<GeneratedFile> Generate(string root) =>
    [
        new GeneratedFile("src/ProcScript.Jobs/event.schema.json", RecordSchema.Of("A line of the journal of a job, but for its hash", typeof(JobEvent), JournalJson.Published)),
        new GeneratedFile("src/ProcScript.Jobs/job.schema.json", RecordSchema.Of("How a job stands", typeof(JobStatus), JobJson.Published)),
        new GeneratedFile("src/ProcScript.Jobs/learn.schema.json", RecordSchema.Of("What jobs teach a library", typeof(LearnDocument), LearnJson.Published)),
    ];
}
