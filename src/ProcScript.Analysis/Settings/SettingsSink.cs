using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Settings;

/// <summary>Takes what is wrong with one settings file.</summary>
/// <param name="text">The file.</param>
/// <param name="findings">Where the findings go.</param>
internal sealed class SettingsSink(SourceText text, ICollection<Finding> findings)
{
    /// <summary>The file.</summary>
    public SourceText Text => text;

    /// <summary>A stretch of the file.</summary>
    public SourceSpan At(TextSpan span) => new(text.Path, span);

    /// <summary>Takes a finding.</summary>
    public void Report(Finding finding) => findings.Add(finding);
}
