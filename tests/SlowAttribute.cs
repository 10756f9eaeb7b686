using Xunit.v3;

namespace ProcScript.Tests;

/// <summary>
/// Takes seconds for what seldom breaks: real processes that are stopped, absurd sizes, storms of edits, sheets that are printed. A plain
/// <c>dotnet test</c> leaves it out; with the environment variable <c>PROCSCRIPT_TESTS</c> set to <c>slow</c> nothing else runs, with
/// <c>both</c> all tests, with <c>all</c> all of them at their full depth. <c>.ci/run</c> runs the slow ones too.
/// </summary>
[AttributeUsage(AttributeTargets.Class | AttributeTargets.Method)]
internal sealed class SlowAttribute : Attribute, ITraitAttribute
{
    /// <inheritdoc/>
    public IReadOnlyCollection<KeyValuePair<string, string>> GetTraits() => [KeyValuePair.Create("pace", "slow")];
}
