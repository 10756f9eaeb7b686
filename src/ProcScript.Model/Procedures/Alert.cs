using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Procedures;

/// <summary>An alert; it stands before the action it belongs to, and before what undoes that.</summary>
/// <param name="Word">The signal word.</param>
/// <param name="Text">What it says, in Markdown.</param>
/// <param name="Source">Where it is written.</param>
/// <param name="Phase">Which way it stands: <c>strip</c> or <c>refit</c> where it is written so.</param>
public sealed record Alert(SignalWord Word, string Text, SourceSpan Source, NeedsPhase Phase = NeedsPhase.Both)
{
    /// <summary>Whether it stands on the way back.</summary>
    public bool IsOfRefit => Phase != NeedsPhase.Strip;

    /// <summary>Whether it stands while things come off, and while work is done on what is off.</summary>
    public bool IsOfStrip => Phase != NeedsPhase.Refit;
}

/// <summary>The signal words, with the meanings of ANSI Z535.6, the worst first.</summary>
public enum SignalWord
{
    /// <summary>Will kill or seriously injure.</summary>
    Danger,

    /// <summary>Could kill or seriously injure.</summary>
    Warning,

    /// <summary>Could injure.</summary>
    Caution,

    /// <summary>Damage, not injury.</summary>
    Notice,
}
