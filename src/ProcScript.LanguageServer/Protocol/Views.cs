using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace ProcScript.LanguageServer.Protocol;

/// <summary>What a view is to be made of, and where it goes.</summary>
/// <param name="Uri">A document with the procedure.</param>
internal sealed record ViewArguments(string Uri)
{
    /// <summary>The job: the procedure's name, with its arguments behind hyphens; else the one at <see cref="Position"/>.</summary>
    public string? Job { get; init; }

    /// <summary>A place in the procedure; without one and without a job the first of the document is meant.</summary>
    public Position? Position { get; init; }

    /// <summary>The options that the machine has.</summary>
    public ImmutableArray<string>? Options { get; init; }

    /// <summary>The address of the folder to write to; else one that goes when the server ends.</summary>
    public string? Folder { get; init; }

    /// <summary>Whether the client is to be asked to show the file.</summary>
    public bool? Show { get; init; }
}

/// <summary>A view that was written.</summary>
/// <param name="Uri">The address of the file.</param>
/// <param name="Job">The job.</param>
/// <param name="Title">What people call the job.</param>
/// <param name="Options">The options that the machine has in it.</param>
/// <param name="Choices">What views there could be of the same procedure.</param>
internal sealed record WrittenView(string Uri, string Job, string Title, ImmutableArray<string> Options, ImmutableArray<ViewChoice> Choices);

/// <summary>A choice of arguments and options.</summary>
/// <param name="Job">The procedure's name, with its arguments behind hyphens.</param>
/// <param name="Options">The options that the machine has.</param>
/// <param name="IsProven">Whether there is a view of it.</param>
internal sealed record ViewChoice(string Job, ImmutableArray<string> Options, bool IsProven);

/// <summary>Where the steps of a job come from, and what the texts come to.</summary>
/// <param name="Steps">Every step, in the order of the pack.</param>
/// <param name="Stretches">The stretches of the texts that something is printed from, outer ones before those within them.</param>
internal sealed record StepPlaces(ImmutableArray<StepPlace> Steps, ImmutableArray<TextStretch> Stretches);

/// <summary>Where a step comes from.</summary>
/// <param name="Number">Its number on the cards.</param>
/// <param name="Written">Where it was written; of a derived one, the line that it follows from. The range is empty.</param>
/// <param name="Calls">The <c>do</c> lines that brought it here, outermost first.</param>
internal sealed record StepPlace(int Number, Location Written, ImmutableArray<Location> Calls);

/// <summary>A stretch of text with the steps that come from it.</summary>
/// <param name="Uri">The document.</param>
/// <param name="Range">The stretch.</param>
/// <param name="Steps">The numbers of the steps, in order; none for the procedure itself, whose head is on the cover.</param>
internal sealed record TextStretch(string Uri, Range Range, ImmutableArray<int> Steps);

/// <summary>Asks for a command.</summary>
internal sealed record ExecuteCommandParams(string Command)
{
    /// <summary>What it is about.</summary>
    public ImmutableArray<ViewArguments>? Arguments { get; init; }
}

/// <summary>The commands that there are.</summary>
internal sealed record ExecuteCommandOptions(ImmutableArray<string> Commands);

/// <summary>Asks the client to show a document.</summary>
internal sealed record ShowDocumentParams(string Uri)
{
    /// <summary>Whether in another program, such as a browser.</summary>
    public bool? External { get; init; }
}

/// <summary>A command with its arguments; without a name it is only read.</summary>
internal sealed record Command(string Title, [property: JsonPropertyName("command")] string Name)
{
    /// <summary>What it is about.</summary>
    public ImmutableArray<ViewArguments>? Arguments { get; init; }
}

/// <summary>A line above the text with something to do.</summary>
internal sealed record CodeLens(Range Range, Command Command);

/// <summary>That lenses come whole.</summary>
internal sealed record CodeLensOptions(bool ResolveProvider);
