using System.Collections.Immutable;
using ProcScript.Model.Figures;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Procedures;

/// <summary>A procedure on one variant of its machine with one choice of arguments, all unrolled.</summary>
public sealed class Procedure
{
    /// <summary>The name.</summary>
    public required string Name { get; init; }

    /// <summary>The arguments, in the order of the parameters; empty where it has none.</summary>
    public required ImmutableArray<string> Arguments { get; init; }

    /// <summary>The names of the parameters that the arguments are for.</summary>
    public ImmutableArray<string> Parameters { get; init; } = [];

    /// <summary>The name with its arguments, usable as a file name, such as <c>door_out-left</c>.</summary>
    public string Job => string.Join('-', Arguments.Prepend(Name));

    /// <summary>The same procedure with other stages.</summary>
    public Procedure With(ImmutableArray<Stage> stages) => new()
    {
        Name = Name,
        Arguments = Arguments,
        Parameters = Parameters,
        Title = Title,
        Declared = Declared,
        Machine = Machine,
        OnlyWith = OnlyWith,
        OnlyWithout = OnlyWithout,
        Goals = Goals,
        Alerts = Alerts,
        Details = Details,
        Stages = stages,
        Work = Work,
        Rules = Rules,
        Files = Files,
        HasErrors = HasErrors,
    };

    /// <summary>What people call it.</summary>
    public required string Title { get; init; }

    /// <summary>Where its name is declared.</summary>
    public required SourceSpan Declared { get; init; }

    /// <summary>The machine, in the variant at hand.</summary>
    public required Machine Machine { get; init; }

    /// <summary>The options that a machine must have to have this job at all.</summary>
    public ImmutableArray<Option> OnlyWith { get; init; } = [];

    /// <summary>The options that it must not have.</summary>
    public ImmutableArray<Option> OnlyWithout { get; init; } = [];

    /// <summary>What it is for.</summary>
    public required ImmutableArray<Goal> Goals { get; init; }

    /// <summary>Alerts for the whole job.</summary>
    public required ImmutableArray<Alert> Alerts { get; init; }

    /// <summary>What its own properties say (people, ppe, tools, uses).</summary>
    public required ActionDetails Details { get; init; }

    /// <summary>The strip, with called procedures in place.</summary>
    public required ImmutableArray<Stage> Stages { get; init; }

    /// <summary>The work between strip and refit.</summary>
    public required ImmutableArray<Step> Work { get; init; }

    /// <summary>The refit rules, those of called procedures included.</summary>
    public required ImmutableArray<RefitRule> Rules { get; init; }

    /// <summary>The files that it is made from: its own and all that they use, in ordinal order.</summary>
    public required ImmutableArray<string> Files { get; init; }

    /// <summary>Whether it is made from a file, and so can see what is declared there.</summary>
    public bool Sees(string path) => Files.BinarySearch(path, StringComparer.Ordinal) >= 0;

    /// <summary>Whether it is what a declaration of a file comes to, with whatever arguments and in whatever variant.</summary>
    public bool IsOf(string path, DeclarationSyntax declaration)
    {
        ArgumentNullException.ThrowIfNull(declaration);
        return Declared.Path == path && Declared.Span == declaration.Name.Span;
    }

    /// <summary>Whether its text or its machine's carries an error, so that a proof would only repeat it.</summary>
    public required bool HasErrors { get; init; }

    /// <summary>The pictures that its steps and rules have.</summary>
    public ImmutableArray<Figure> Figures => field.IsDefault
        ? field =
        [
            .. Stages.SelectMany(stage => stage.Steps)
                .Concat(Work)
                .Select(step => step.Details)
                .Concat(Rules.OfType<TestRule>().SelectMany(test => test.Steps).Select(step => step.Details))
                .Concat(Rules.OfType<CheckRule>().Select(check => check.Details))
                .Where(details => !details.Figures.IsEmpty || details.Refit is { Figures.IsEmpty: false })
                .SelectMany(details => details.Figures.AddRange(details.Refit?.Figures ?? [])),
        ]
        : field;

    /// <summary>The same procedure with other steps and refit rules.</summary>
    /// <param name="stages">The strip.</param>
    /// <param name="work">The work.</param>
    /// <param name="rules">The refit rules.</param>
    public Procedure With(ImmutableArray<Stage> stages, ImmutableArray<Step> work, ImmutableArray<RefitRule> rules) => new()
    {
        Name = Name,
        Arguments = Arguments,
        Parameters = Parameters,
        Title = Title,
        Declared = Declared,
        Machine = Machine,
        OnlyWith = OnlyWith,
        OnlyWithout = OnlyWithout,
        Goals = Goals,
        Alerts = Alerts,
        Details = Details,
        Stages = stages,
        Work = work,
        Rules = rules,
        Files = Files,
        HasErrors = HasErrors,
    };
}
