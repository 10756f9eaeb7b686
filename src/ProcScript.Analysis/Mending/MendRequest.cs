using System.Collections.Frozen;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Mending;

/// <summary>What is to be mended.</summary>
public sealed record MendRequest
{
    /// <summary>The codes of the rules whose findings are to be mended; null for all.</summary>
    public FrozenSet<string>? Rules { get; init; }

    /// <summary>Whether fixes that need a look are applied too.</summary>
    public bool NeedsLook { get; init; }

    /// <summary>Whether a file may be changed; the findings in the others are no concern of the run.</summary>
    public Func<string, bool> MayChange { get; init; } = _ => true;

    /// <summary>Whether fixes of this grade are applied.</summary>
    public bool Allows(FixGrade grade) => grade == FixGrade.Safe || (NeedsLook && grade == FixGrade.NeedsLook);
}
