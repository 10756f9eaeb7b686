using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace ProcScript.LanguageServer.Protocol;

/// <summary>A finding.</summary>
internal sealed record Diagnostic(Range Range, int Severity, string Code, string Source, string Message)
{
    /// <summary>Where the rule is explained.</summary>
    public CodeDescription? CodeDescription { get; init; }

    /// <summary>What a client may show in another style.</summary>
    public ImmutableArray<int>? Tags { get; init; }

    /// <summary>The other places that matter.</summary>
    public ImmutableArray<DiagnosticRelatedInformation>? RelatedInformation { get; init; }

    /// <summary>What the server wants back with a request for quick fixes.</summary>
    public DiagnosticData? Data { get; init; }
}

/// <summary>What the server wants back with a request for quick fixes.</summary>
/// <param name="Rule">The name of the rule.</param>
internal sealed record DiagnosticData(string Rule);

/// <summary>Where a rule is explained.</summary>
internal sealed record CodeDescription(string Href);

/// <summary>Another place that matters, and why.</summary>
internal sealed record DiagnosticRelatedInformation(Location Location, string Message);

/// <summary>The findings of a document.</summary>
internal sealed record PublishDiagnosticsParams(string Uri, ImmutableArray<Diagnostic> Diagnostics)
{
    /// <summary>The version that they are for.</summary>
    public int? Version { get; init; }
}

/// <summary>Asks for the findings of a document.</summary>
internal sealed record DocumentDiagnosticParams(TextDocumentIdentifier TextDocument)
{
    /// <summary>What the client has.</summary>
    public string? PreviousResultId { get; init; }
}

/// <summary>The findings of a document, or that nothing changed.</summary>
internal sealed record DocumentDiagnosticReport(string Kind, string ResultId)
{
    /// <summary>The findings, where they changed.</summary>
    public ImmutableArray<Diagnostic>? Items { get; init; }
}

/// <summary>Asks for the findings of all documents.</summary>
internal sealed record WorkspaceDiagnosticParams(ImmutableArray<PreviousResultId> PreviousResultIds);

/// <summary>What the client has of a document.</summary>
internal sealed record PreviousResultId(string Uri, string Value);

/// <summary>The findings of all documents.</summary>
internal sealed record WorkspaceDiagnosticReport(ImmutableArray<WorkspaceDocumentDiagnosticReport> Items);

/// <summary>The findings of a document, or that nothing changed.</summary>
internal sealed record WorkspaceDocumentDiagnosticReport(
    string Kind,
    string Uri,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.Never)] int? Version,
    string ResultId)
{
    /// <summary>The findings, where they changed.</summary>
    public ImmutableArray<Diagnostic>? Items { get; init; }
}
