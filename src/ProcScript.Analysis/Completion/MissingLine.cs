using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Completion;

/// <summary>A line that some variant lacks.</summary>
/// <param name="Words">What it says.</param>
/// <param name="MovedFrom">Where it stands already, too late; null where nowhere.</param>
internal readonly record struct MissingLine(string Words, SourceSpan? MovedFrom);
