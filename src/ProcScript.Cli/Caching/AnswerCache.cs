using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using ProcScript.Cli.Reports;
using ProcScript.Cli.Sources;
using ProcScript.Cli.Verbs;
using ProcScript.Model.Figures;
using ProcScript.Model.Sources;

namespace ProcScript.Cli.Caching;

/// <summary>
/// Answers of earlier checks, each good for as long as everything is the same that it was found from: the program, the arguments and the
/// surroundings, the day, and what comes of reading every file that was read then. Which files are read follows from what stands in those
/// read before, so no other could have a say. Whatever is wrong with a remembered answer, there is none, and the check is made.
/// </summary>
internal sealed class AnswerCache
{
    /// <summary>The fewest files for which it is quicker to look an answer up than to find it.</summary>
    public const int FewestFiles = 64;

    /// <summary>The longest output that is remembered, in characters.</summary>
    public const int MostCharacters = 4 << 20;

    /// <summary>How many answers are kept; the oldest go.</summary>
    public const int MostAnswers = 64;

    private const string Ending = ".answer";

    private readonly string _folder;
    private readonly string _file;
    private readonly string _question;
    private readonly DiskSourceStore _store;

    private AnswerCache(string folder, string file, string question, DiskSourceStore store)
    {
        _folder = folder;
        _file = file;
        _question = question;
        _store = store;
    }

    /// <summary>The cache for a run; null where nothing is to be remembered.</summary>
    public static AnswerCache? For(CacheRequest request, DiskSourceStore store, Surroundings around)
    {
        var selection = store.Selection;
        if (selection.StandardInput is not null || selection.Paths.Length < FewestFiles || request.FolderFor(around) is not { } folder)
        {
            return null;
        }

        // One place for each thing asked, so that a newer answer takes the place of an older one.
        ImmutableArray<string> asked = [around.CurrentFolder, selection.Root, .. request.Arguments];
        var question = DigestOf(
        [
            .. BuildIdentity.Of(AppContext.BaseDirectory),
            $"{around.Today:O} {around.OutputIsTerminal} {around.Variable("NO_COLOR")} {around.Variable("TERM")} {RepositoryPaths.For(selection.Root).Of("")}",
            .. asked,
            .. selection.Paths,
        ]);
        return new AnswerCache(folder, Path.Combine(folder, DigestOf(asked)[..32] + Ending), question, store);
    }

    /// <summary>The answer to the same question about the same files; null where none is remembered.</summary>
    /// <param name="stop">Ends the work.</param>
    public CachedAnswer? Find(CancellationToken stop)
    {
        if (Remembered() is not { } answer || answer.Question != _question)
        {
            return null;
        }

        var isSame = true;
        Parallel.ForEach(answer.Sources, new ParallelOptions { CancellationToken = stop }, (source, loop) =>
        {
            if ((source.IsFigure ? DigestOf(_store.FindFigure(source.Path)) : DigestOf(_store.Read(source.Path))) != source.Digest)
            {
                isSame = false;
                loop.Stop();
            }
        });
        return isSame ? answer : null;
    }

    /// <summary>Remembers an answer, if it is one that can be had again.</summary>
    /// <exception cref="UsageException">It cannot be written.</exception>
    public void Keep(ExitCode code, string text)
    {
        // What the system said about a file it may say otherwise next time.
        if (code is not (ExitCode.Clean or ExitCode.Findings)
            || text.Length > MostCharacters
            || _store.Readings.Keys.Concat(_store.Figures.Keys).Any(path => path.Contains('\n')))
        {
            return;
        }

        ImmutableArray<CachedSource> sources =
        [
            .. _store.Readings.OrderBy(read => read.Key, StringComparer.Ordinal).Select(read => new CachedSource(read.Key, DigestOf(read.Value), IsFigure: false)),
            .. _store.Figures.OrderBy(found => found.Key, StringComparer.Ordinal).Select(found => new CachedSource(found.Key, DigestOf(found.Value), IsFigure: true)),
        ];
        using PendingFiles files = new();
        if (!Directory.Exists(_folder))
        {
            files.Add(Path.Combine(_folder, ".gitignore"), "*\n");
        }

        files.Add(_file, new CachedAnswer(_question, sources, code, text).Write());
        files.Commit(replace: true);
        DropTheOldest();
    }

    private CachedAnswer? Remembered()
    {
        try
        {
            return File.Exists(_file) ? CachedAnswer.Read(File.ReadAllText(_file)) : null;
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    private void DropTheOldest()
    {
        try
        {
            var answers = new DirectoryInfo(_folder).EnumerateFiles("*" + Ending).OrderByDescending(file => file.LastWriteTimeUtc);
            foreach (var file in answers.Skip(MostAnswers))
            {
                file.Delete();
            }
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            // Another run may have been quicker.
        }
    }

    private static string DigestOf(FigureFile figure) => Convert.ToHexStringLower(SHA256.HashData(figure.Identity(FigureLimits.MostBytes)));

    private static string DigestOf(SourceReading reading) =>
        DigestOf([$"{reading.Outcome}", reading.Detail, reading.Content ?? ""]);

    private static string DigestOf(ImmutableArray<string> words)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (var word in words)
        {
            var bytes = Encoding.UTF8.GetBytes(word);
            // With its length before it no word can pass for two.
            hash.AppendData(BitConverter.GetBytes(bytes.Length));
            hash.AppendData(bytes);
        }

        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }
}
