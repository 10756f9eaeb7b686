using System.Globalization;

namespace ProcScript.Analysis.Reports;

/// <summary>
/// What a finding is known by from one state of a library to the next: the rule, the file, and the words of the line it is about. The
/// number of the line and the words of the message are no part of it, so that it outlives what moves the line and newer wording.
/// </summary>
/// <param name="Key">The same for findings of one rule on lines of one file with the same words.</param>
/// <param name="Ordinal">Tells these apart, in the order of the text, counted from 1.</param>
public readonly record struct Fingerprint(string Key, int Ordinal)
{
    /// <summary>The key, with the ordinal from the second on; no two findings of a report have the same.</summary>
    public override string ToString() => Ordinal == 1 ? Key : string.Create(CultureInfo.InvariantCulture, $"{Key}-{Ordinal}");
}
