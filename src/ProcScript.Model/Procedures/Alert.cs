using ProcScript.Syntax.Text;

namespace ProcScript.Model.Procedures;

/// <summary>An alert; it stands before the action it belongs to.</summary>
/// <param name="Word">The signal word.</param>
/// <param name="Text">What it says, in Markdown.</param>
/// <param name="Source">Where it is written.</param>
public sealed record Alert(SignalWord Word, string Text, SourceSpan Source);

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
