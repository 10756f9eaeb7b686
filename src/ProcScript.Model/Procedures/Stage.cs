using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Procedures;

/// <summary>A stage of the strip.</summary>
/// <param name="Title">Its title.</param>
/// <param name="Steps">Its steps.</param>
/// <param name="Source">Where it is written.</param>
public sealed record Stage(string Title, ImmutableArray<Step> Steps, SourceSpan Source);
