using System.Collections.Concurrent;
using System.Collections.Immutable;
using ProcScript.Analysis.Tools;
using ProcScript.Model;
using ProcScript.Model.Catalog;
using ProcScript.Model.Procedures;
using ProcScript.Syntax;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Reading;

/// <summary>
/// The library as the check of one procedure sees it: there is no way to it but by a question, and every question is noted with its answer. So
/// nobody has to say what a rule reads. What came of the check holds for as long as all the answers do.
/// </summary>
/// <param name="library">The library, or the files of it that the procedure is made from.</param>
/// <param name="isNoted">Whether somebody will ask whether the answers hold.</param>
internal sealed class SeenLibrary(Library library, bool isNoted)
{
    private readonly ConcurrentDictionary<LibraryQuestion, object?>? _answers = isNoted ? new(concurrencyLevel: 1, capacity: 4) : null;
    private Library _library = library;

    /// <summary>The torque wrenches that a procedure can see.</summary>
    public TorqueWrenches Wrenches(Procedure procedure) => new((ImmutableArray<Tool>)Ask(new WrenchesQuestion(procedure.Files))!);

    /// <summary>The crowfoots that a procedure can see.</summary>
    public Crowfoots Crowfoots(Procedure procedure) => new((ImmutableArray<Tool>)Ask(new CrowfootsQuestion(procedure.Files))!);

    /// <summary>What procedures say of actions, those that a procedure can see.</summary>
    public GivenDetails Given(Procedure procedure) => (GivenDetails)Ask(new GivenQuestion(procedure.Files))!;

    /// <summary>
    /// The file that has a place, to read the declaration there and what line that is on, and nothing else; null where there is no such file.
    /// </summary>
    public SyntaxTree? Around(SourceSpan place) => Ask(new TextQuestion(place)) is null ? null : _library.Trees.GetValueOrDefault(place.Path);

    /// <summary>Whether every answer is the same in another library.</summary>
    /// <param name="answers">The answers of that library, as far as somebody has asked.</param>
    public bool Holds(LibraryAnswers answers) => _answers is not null && _answers.All(noted => noted.Key.AreSame(noted.Value, answers.To(noted.Key)));

    /// <summary>Takes the place of the library another in which the answers hold, so that no old texts are kept alive.</summary>
    public void MoveTo(Library now) => _library = now;

    private object? Ask(LibraryQuestion question) => _answers is null ? question.Answer(_library) : _answers.GetOrAdd(question, static (asked, from) => asked.Answer(from), _library);
}

/// <summary>What a library answers, each question once.</summary>
/// <param name="library">The library.</param>
internal sealed class LibraryAnswers(Library library)
{
    private readonly ConcurrentDictionary<LibraryQuestion, object?> _answers = new();

    /// <summary>The answer to a question.</summary>
    public object? To(LibraryQuestion question) => _answers.GetOrAdd(question, static (asked, from) => asked.Answer(from), library);
}
