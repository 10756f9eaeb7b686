using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text.Json;
using ProcScript.LanguageServer.Protocol;

namespace ProcScript.LanguageServer.Checking;

/// <summary>A short name of what a document's diagnostics are, to tell whether they changed.</summary>
internal static class DiagnosticDigest
{
    private const string None = "0";

    /// <summary>The name.</summary>
    public static string Of(ImmutableArray<Diagnostic> diagnostics) => diagnostics.IsEmpty
        ? None
        : Convert.ToHexStringLower(SHA256.HashData(JsonSerializer.SerializeToUtf8Bytes(diagnostics, ProtocolJson.Default.ImmutableArrayDiagnostic)))[..16];
}
