using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Settings;
using ProcScript.Analysis.Translations;
using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;
using ProcScript.Model;

namespace ProcScript.Cli.Verbs;

/// <summary><c>texts export</c> and <c>texts import</c>: the authors' texts on their way to translators and back.</summary>
internal static class TextsVerb
{
    /// <summary>Writes out every text, with the translation where it still holds.</summary>
    public static ExitCode Export(TextsRequest request, Surroundings around, CancellationToken stop)
    {
        var (library, translation, source, store) = Read(request, around, stop);
        TranslationUnit[] units = [.. translation.Units(library)];
        var done = units.Count(unit => unit.Target.Length > 0);
        OutputFile.Write(request.File, XliffFile.Write(units, source, request.Language.Tag()), store, around).WriteLine(
            $"wrote {request.File}: {Counted.Of(units.Length, "text")}, {done} of them translated into {request.Language.Tag()}");
        return ExitCode.Clean;
    }

    /// <summary>Takes in the translations that a translator gives back.</summary>
    public static ExitCode Import(TextsRequest request, Surroundings around, CancellationToken stop)
    {
        var (library, kept, source, store) = Read(request, around, stop);
        var given = XliffFile.Read(Text(Path.GetFullPath(request.File, around.CurrentFolder), request.File));
        if (given.Problem.Length > 0)
        {
            throw new UsageException($"cannot read '{request.File}': {given.Problem}.");
        }

        if (given.TargetLanguage != request.Language.Tag())
        {
            throw new UsageException($"'{request.File}' is a translation into '{given.TargetLanguage}', and '{request.Language.Tag()}' is asked for.");
        }

        var taken = TranslationUpdate.Of(library, kept, given);
        using PendingFiles files = new();
        var file = Path.Combine(store.Selection.Root, kept.Path);
        if (RealPath.LeadsOut(store.Selection.Root, file))
        {
            throw new UsageException($"cannot write '{kept.Path}': it is a link that leads out of the library; put the file itself there.");
        }

        files.Add(file, XliffFile.Write(taken.Units, source, request.Language.Tag()));
        files.Commit(replace: true);
        around.Output.WriteLine($"wrote {RelativePath.Inside(around.CurrentFolder, file)}: {Counted.Of(taken.Taken, "translation")} taken in, {taken.Units.Length} in all");
        foreach (var (unit, why) in taken.LeftOut)
        {
            around.Output.WriteLine(LogCommands.DisarmLines($"left out {unit.Path}: {unit.Key}: {why}"));
        }

        return taken.LeftOut.IsEmpty ? ExitCode.Clean : ExitCode.Findings;
    }

    private static (Library Library, LibraryTranslation Translation, string Source, DiskSourceStore Store) Read(TextsRequest request, Surroundings around, CancellationToken stop)
    {
        DiskSourceStore store = new(SourceSelection.Find(request.Input, around.CurrentFolder), around.OpenInput);
        var settings = SettingsReader.Read(store).Everywhere;
        var library = LibraryBinder.Bind(store, stop);
        if (store.HasUnreadableInput)
        {
            throw new UsageException("a file could not be read, so that its texts are not known; nothing was written. See 'procscript check'.");
        }

        var translation = LibraryTranslation.Read(store, settings.Get(SettingsTable.TextsFolder), request.Language);
        return (library, translation, settings.Get(SettingsTable.TextsLanguage).Tag(), store);
    }

    private static string Text(string path, string name)
    {
        try
        {
            return File.ReadAllText(path);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new UsageException($"cannot read '{name}': {failure.Message}");
        }
    }
}
