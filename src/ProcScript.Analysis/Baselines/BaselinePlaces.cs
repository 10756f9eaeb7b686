using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Baselines;

/// <summary>Finds the entries of a baseline in its text.</summary>
/// <param name="text">The text.</param>
internal sealed class BaselinePlaces(SourceText text)
{
    private int _at;

    /// <summary>The entries with the places of their fingerprints; they come in the order of the text.</summary>
    public IEnumerable<(BaselineEntry Entry, SourceSpan Place)> Find(IEnumerable<BaselineEntry> entries) =>
        entries.Select(entry => (entry, new SourceSpan(text.Path, Find(entry.Fingerprint))));

    private TextSpan Find(string fingerprint)
    {
        // A fingerprint that is written with escapes is found nowhere; it stands after the one before.
        var found = text.Content.IndexOf($"\"{fingerprint}\"", _at, StringComparison.Ordinal);
        if (found < 0)
        {
            return new TextSpan(_at, 0);
        }

        _at = found + fingerprint.Length + 2;
        return TextSpan.FromBounds(found, _at);
    }
}
