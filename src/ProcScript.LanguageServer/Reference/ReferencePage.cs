using System.Globalization;
using ProcScript.LanguageServer.Workspaces;

namespace ProcScript.LanguageServer.Reference;

/// <summary>The reference as a file that a client can open; it is written when somebody is first told of it.</summary>
/// <param name="host">Where to write.</param>
internal sealed class ReferencePage(IServerHost host)
{
    private readonly Lazy<string?> _written = new(() => Write(host));

    /// <summary>The address of a line of it; null where it cannot be written.</summary>
    public string? UriOf(int line) => _written.Value is { } uri ? string.Create(CultureInfo.InvariantCulture, $"{uri}#L{line}") : null;

    private static string? Write(IServerHost host)
    {
        try
        {
            return DocumentUri.FromPath(host.Write(null, "LANGUAGE.md", LanguageReference.Text));
        }
        catch (IOException)
        {
            return null;
        }
    }
}
