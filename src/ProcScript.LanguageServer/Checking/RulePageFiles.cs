using System.Collections.Concurrent;
using ProcScript.Analysis;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Syntax.Findings;

namespace ProcScript.LanguageServer.Checking;

/// <summary>The pages of rules as files that a client can open; each is written when a finding first leads there.</summary>
/// <param name="host">Where to write.</param>
internal sealed class RulePageFiles(IServerHost host)
{
    private readonly ConcurrentDictionary<string, Lazy<string?>> _written = new(StringComparer.Ordinal);

    /// <summary>The address of the page; null where it cannot be written.</summary>
    public string? UriOf(RuleInfo rule) => _written.GetOrAdd(rule.Code, code => new Lazy<string?>(() => Write(code))).Value;

    private string? Write(string code)
    {
        try
        {
            return RuleCatalog.Find(code) is { } rule ? DocumentUri.FromPath(host.Write(null, $"{code}.md", Page(rule))) : null;
        }
        catch (IOException)
        {
            return null;
        }
    }

    private static string Page(Rule rule) =>
        $"""
        # {rule.Info.Code} {rule.Info.Name}: {rule.Info.Title}

        {rule.Page.What}

        {rule.Page.Why}

        ## Wrong

        ```proc
        {rule.Page.Wrong.TrimEnd()}
        ```

        ## Right

        ```proc
        {rule.Page.Right.TrimEnd()}
        ```

        """;
}
