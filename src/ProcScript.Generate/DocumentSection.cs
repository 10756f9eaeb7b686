namespace ProcScript.Generate;

/// <summary>A stretch of a document that is generated, between two comments.</summary>
internal static class DocumentSection
{
    /// <summary>The document with another text between the comments <c>name:begin</c> and <c>name:end</c>.</summary>
    /// <exception cref="GenerationException">The document is missing, or has no such comments.</exception>
    public static GeneratedFile Fill(string root, string document, string name, string text)
    {
        var path = Path.Combine(root, document);
        var now = File.Exists(path) ? File.ReadAllText(path) : throw new GenerationException($"{document} is missing.");
        var (first, last) = ($"<!-- {name}:begin -->", $"<!-- {name}:end -->");
        var begin = now.IndexOf(first, StringComparison.Ordinal);
        var end = now.IndexOf(last, StringComparison.Ordinal);
        return begin < 0 || end < begin
            ? throw new GenerationException($"{document} needs the lines {first} and {last}, in this order.")
            : new GeneratedFile(document, $"{now[..begin]}{first}\n\n{text}\n{now[end..]}");
    }
}
