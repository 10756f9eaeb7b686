using System.Collections.Immutable;
using ProcScript.Analysis.Mending;
using ProcScript.Model;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Drafting;

/// <summary>Declares what the steps of procedures name and their machines lack: texts in, texts out.</summary>
public static class LibraryDraft
{
    /// <summary>
    /// Drafts, and checks what comes out: where what is guessed makes a step fail that does without it, the guesses are only asked.
    /// </summary>
    /// <param name="store">The library.</param>
    /// <param name="settings">What the shop has chosen.</param>
    /// <param name="request">What is to be drafted.</param>
    /// <param name="cancellation">Ends the work with an <see cref="OperationCanceledException"/>.</param>
    public static DraftReport Run(ISourceStore store, CheckSettings settings, DraftRequest request, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(store);
        ArgumentNullException.ThrowIfNull(request);
        MendSource source = new(store);
        var library = LibraryBinder.Bind(source.With(Texts([])), cancellation);
        var draft = Of(library, request);
        var errors = draft.Files.IsEmpty || !request.Guesses ? 0 : Errors(draft);
        if (errors == 0)
        {
            return draft;
        }

        var careful = Of(library, request with { Guesses = false });
        return Errors(careful) < errors ? careful : draft;

        int Errors(DraftReport report) => LibraryCheck.Judge(source.With(Texts(report.Files)), settings, cancellation)
            .Findings.Count(reported => reported.Severity == Severity.Error);
    }

    private static ImmutableSortedDictionary<string, string> Texts(ImmutableArray<MendedFile> files) =>
        files.ToImmutableSortedDictionary(file => file.Path, file => file.After, StringComparer.Ordinal);

    /// <summary>Drafts. Files whose text has errors are left alone.</summary>
    /// <param name="library">The library.</param>
    /// <param name="request">What is to be drafted.</param>
    public static DraftReport Of(Library library, DraftRequest request)
    {
        ArgumentNullException.ThrowIfNull(library);
        ArgumentNullException.ThrowIfNull(request);
        return new DraftRun(library, request).Run();
    }
}
