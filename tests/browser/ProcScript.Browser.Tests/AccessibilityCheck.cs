using System.Text.Json;
using Deque.AxeCore.Commons;
using Microsoft.Playwright;

namespace ProcScript.Browser.Tests;

/// <summary>What axe finds on a page, by every one of its rules.</summary>
/// <param name="Rule">The rule that is broken, by its name.</param>
/// <param name="Impact">How grave that is: minor, moderate, serious, or critical.</param>
/// <param name="Help">What the rule asks for.</param>
/// <param name="Places">The elements that break it, as they stand in the page.</param>
internal sealed record AccessibilityFinding(string Rule, string Impact, string Help, string[] Places)
{
    /// <summary>As many places as a message has room for.</summary>
    private const int Told = 4;

    public bool IsSerious => Impact is "serious" or "critical";

    public override string ToString() => $"{Rule}: {Help}: {string.Join(" | ", Places.Take(Told))}";
}

/// <summary>Holds a page to axe.</summary>
internal static class AccessibilityCheck
{
    /// <summary>
    /// One call in the page, for it has no frames: what would put the results of several together carries every element of the page through
    /// JSON twice, which takes longer than all of the rules. Every place that breaks a rule is told; of what keeps to one, nobody reads more.
    /// </summary>
    private const string Run =
        """
        async () => {
          const result = await axe.run(document, { resultTypes: ["violations"] });
          return JSON.stringify({
            findings: result.violations.map(({ id, impact, help, nodes }) => ({ rule: id, impact, help, places: nodes.map(node => node.html) })),
            kept: result.passes.length,
            frames: window.length,
          });
        }
        """;

    private static readonly Lazy<string> Axe = new(new BundledAxeScriptProvider().GetScript);

    /// <summary>What axe finds on a page.</summary>
    /// <param name="page">The page, without frames; that no rule has anything to look at there is no result, and fails.</param>
    public static async Task<IReadOnlyList<AccessibilityFinding>> CheckAsync(IPage page)
    {
        if (!await page.EvaluateAsync<bool>("() => 'axe' in window"))
        {
            await page.EvaluateAsync(Axe.Value);
        }

        var result = JsonSerializer.Deserialize<Result>(await page.EvaluateAsync<string>(Run), JsonSerializerOptions.Web)!;
        Assert.NotEqual(0, result.Kept);
        Assert.Equal(0, result.Frames);
        return result.Findings;
    }

    private sealed record Result(AccessibilityFinding[] Findings, int Kept, int Frames);
}
