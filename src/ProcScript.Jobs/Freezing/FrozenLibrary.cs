using System.Text;
using ProcScript.Model.Figures;
using ProcScript.Model.Sources;

namespace ProcScript.Jobs.Freezing;

/// <summary>A library as it was when a job was opened: texts, settings and pictures, by their paths.</summary>
/// <param name="files">The files.</param>
public sealed class FrozenLibrary(IReadOnlyDictionary<string, byte[]> files) : ISourceStore
{
    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <inheritdoc/>
    public IReadOnlyList<string> Paths { get; } = [.. files.Keys.Where(path => path.EndsWith(".proc", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];

    /// <inheritdoc/>
    public SourceReading Read(string path)
    {
        if (!files.TryGetValue(path, out var bytes))
        {
            return new SourceReading(null, SourceOutcome.Missing);
        }

        try
        {
            return new SourceReading(Strict.GetString(bytes), SourceOutcome.Read);
        }
        catch (DecoderFallbackException)
        {
            return new SourceReading(null, SourceOutcome.NotText);
        }
    }

    /// <inheritdoc/>
    public FigureFile FindFigure(string path) => files.TryGetValue(path, out var bytes) ? FigureFile.Of(bytes) : FigureFile.Missing;
}
