using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace ProcScript.Browser.Tests;

/// <summary>What axe says of a page, by every one of its rules.</summary>
internal static class AccessibilityCheck
{
    /// <summary>
    /// Every place that breaks a rule is told; of what keeps to one, one place each. Telling all of these too, with a selector that finds
    /// each again, takes most of the time on a long page, and nobody reads it.
    /// </summary>
    private static readonly AxeRunOptions Options = new() { ResultTypes = [ResultType.Violations] };

    public static Task<AxeResult> CheckAsync(IPage page) => page.RunAxe(Options);
}
