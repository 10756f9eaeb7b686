using System.Collections.Immutable;
using ProcScript.Analysis.Settings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Prose;

/// <summary>The texts of a file, and the alerts that stand together in it.</summary>
/// <param name="Text">The file.</param>
/// <param name="Texts">Its texts, in order.</param>
/// <param name="AlertRuns">The alerts that stand together before one step or in one block, where there are several.</param>
internal sealed record FileProse(SourceText Text, ImmutableArray<ProseText> Texts, ImmutableArray<ImmutableArray<AlertSyntax>> AlertRuns)
{
    /// <summary>What the shop has chosen for the file.</summary>
    public PathSettings Settings { get; init; } = PathSettings.BuiltIn;
}
