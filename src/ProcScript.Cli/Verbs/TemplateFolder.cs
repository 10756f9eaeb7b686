using ProcScript.Cards;
using ProcScript.Cli.Sources;
using ProcScript.Model.Sources;

namespace ProcScript.Cli.Verbs;

/// <summary>The shop's own templates.</summary>
internal static class TemplateFolder
{
    /// <summary>The standard templates, with those in the folder in place of the standard ones of the same name.</summary>
    /// <exception cref="UsageException">The folder cannot be read, or a template in it is wrong.</exception>
    public static PackTemplates Read(string? typed, string currentFolder)
    {
        if (typed is null)
        {
            return PackTemplates.Standard;
        }

        var folder = Path.GetFullPath(typed, currentFolder);
        if (!Directory.Exists(folder))
        {
            throw new UsageException($"there is no folder of templates '{typed}'.");
        }

        var files = Directory.EnumerateFiles(folder)
            .Where(path => !Path.GetFileName(path).StartsWith('.'))
            .ToDictionary(path => Path.GetFileName(path), ReadFile, StringComparer.Ordinal);
        var templates = PackTemplates.Standard.With(files);
        Refuse(templates.Faults);
        return templates;
    }

    /// <summary>Turns faults of templates into a refusal.</summary>
    /// <exception cref="UsageException">There are faults.</exception>
    public static void Refuse(IReadOnlyCollection<TemplateFault> faults)
    {
        if (faults.Count > 0)
        {
            throw new UsageException(string.Join("\nprocscript: ", faults.Select(Text)));
        }
    }

    private static string Text(TemplateFault fault)
    {
        var place = fault.Line == 0 ? fault.File : FormattableString.Invariant($"{fault.File}:{fault.Line}:{fault.Column}");
        return $"template {place}: {fault.Message}\n  {fault.Help}";
    }

    private static string ReadFile(string path)
    {
        try
        {
            using var file = File.OpenRead(path);
            var reading = SourceBytes.Read(file);
            return reading.Outcome == SourceOutcome.Read
                ? reading.Content!
                : throw new UsageException($"the template '{path}' is no text: {(reading.Detail.Length > 0 ? reading.Detail : "It is too large.")}");
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new UsageException($"cannot read the template '{path}': {failure.Message}");
        }
    }
}
