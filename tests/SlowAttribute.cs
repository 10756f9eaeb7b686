using Xunit.v3;

namespace ProcScript.Tests;

/// <summary>
/// Takes seconds for what seldom breaks: real processes that are stopped, absurd sizes, storms of edits, sheets that are printed. A plain
/// <c>dotnet test</c> leaves it out; with the environment variable <c>PROCSCRIPT_TESTS</c> set to <c>slow</c> nothing else runs, with
/// <c>all</c> everything. <c>.ci/run</c> runs both.
/// </summary>
[AttributeUsage(AttributeTargets.Class | AttributeTargets.Method)]
internal sealed class SlowAttribute : Attribute, ITraitAttribute
{
    /// <inheritdoc/>
    public IReadOnlyCollection<KeyValuePair<string, string>> GetTraits() => [KeyValuePair.Create("pace", "slow")];
}
