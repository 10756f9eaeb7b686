using System.Collections.Concurrent;
using System.Collections.Immutable;
using ProcScript.Model.Catalog;
using ProcScript.Model.Figures;
using ProcScript.Model.Procedures;
using ProcScript.Model.Texts;
using ProcScript.Syntax;
using ProcScript.Syntax.Findings;

namespace ProcScript.Model;

/// <summary>A whole library, parsed and bound.</summary>
public sealed class Library
{
    private readonly ConcurrentDictionary<ImmutableArray<string>, GivenDetails> _given = new();

    /// <summary>The trees by path.</summary>
    public required ImmutableSortedDictionary<string, SyntaxTree> Trees { get; init; }

    /// <summary>Whether it is all that there is below the root, and not only what somebody asked about.</summary>
    public bool IsWhole { get; init; }

    /// <summary>The authors' texts in another language; null where they are told as they are written.</summary>
    public LibraryTexts? Texts { get; init; }

    /// <summary>Every kind of the catalog that has no error in its text, in the order of files and text.</summary>
    public required ImmutableArray<Kind> Kinds { get; init; }

    /// <summary>Every tool of the catalog that has no error in its text, in the order of files and text.</summary>
    public required ImmutableArray<Tool> Tools
    {
        get;
        init
        {
            field = value;
            TorqueWrenches = [.. value.Where(tool => tool.Range is not null)];
        }
    }

    /// <summary>Those of the tools that have a range of torques, in the same order.</summary>
    public ImmutableArray<Tool> TorqueWrenches { get; private init; }

    /// <summary>Every procedure in every variant that matters with every choice of arguments, in the order of files and text.</summary>
    public required ImmutableArray<Procedure> Procedures { get; init; }

    /// <summary>Every machine, in every variant that some procedure or its own check needs; the plain variant first.</summary>
    public required ImmutableArray<Machines.Machine> Machines { get; init; }

    /// <summary>What the procedures of some files say of actions: what a procedure sees is said in its own file and in all that this uses.</summary>
    public GivenDetails Given(ImmutableArray<string> files) => _given.GetOrAdd(files, from => GivenDetails.In(from.SelectMany(path => ByFile[path])));

    private ILookup<string, Procedure> ByFile =>
        field ??= Procedures.ToLookup(procedure => procedure.Declared.Path, StringComparer.Ordinal);

    /// <summary>Finds the file of a picture.</summary>
    public Func<string, FigureFile> FindFigure { get; init; } = _ => FigureFile.Missing;

    /// <summary>Every picture that is wanted on a card, in no promised order, each place once.</summary>
    public IEnumerable<Figure> Figures => Machines.SelectMany(machine => machine.Figures)
        .Concat(Procedures.SelectMany(procedure => procedure.Figures))
        .DistinctBy(figure => (figure.Path, figure.Declared));

    /// <summary>How it came of the library before; null where it was made as a whole.</summary>
    public LibraryStep? Step { get; init; }

    /// <summary>The findings of syntax and model, in the order of files and text, without repeats.</summary>
    public required ImmutableArray<Finding> Findings { get; init; }
}
